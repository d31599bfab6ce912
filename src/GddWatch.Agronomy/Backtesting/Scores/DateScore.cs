namespace GddWatch.Agronomy.Backtesting.Scores;

/// <summary>How well dates were foretold.</summary>
public sealed record DateScore
{
    /// <summary>How many seasons have an observed date.</summary>
    public required int Seasons { get; init; }

    /// <summary>How far a foretold date may lie from the observed one and still be a hit, on either side [days].</summary>
    public required int WithinDays { get; init; }

    /// <summary>How many of them were foretold within that range.</summary>
    public required int Hits { get; init; }

    /// <summary>How many were not: foretold outside it, or not at all.</summary>
    public required int Misses { get; init; }

    /// <summary>How many of the misses were not foretold at all; their date counts as the day after the season.</summary>
    public required int NeverForetold { get; init; }

    /// <summary>In how many seasons in which it was looked for and did not come it was foretold all the same.</summary>
    public required int FalseOpenings { get; init; }

    /// <summary>In how many seasons it was looked for and did not come.</summary>
    public required int LookedForInVain { get; init; }

    /// <summary>Mean of the days between foretold and observed date, whichever came first [days].</summary>
    public required double MeanAbsoluteErrorDays { get; init; }

    /// <summary>Its interval; null where there is none.</summary>
    public required ConfidenceInterval? MeanAbsoluteErrorInterval { get; init; }

    /// <summary>Mean of the days from observed to foretold date: positive is late, negative early [days].</summary>
    public required double BiasDays { get; init; }

    /// <summary>Its interval; null where there is none.</summary>
    public required ConfidenceInterval? BiasInterval { get; init; }

    /// <summary>Root of the mean square of those days [days].</summary>
    public required double RootMeanSquareErrorDays { get; init; }

    /// <summary>Over how many groups was drawn for the intervals: years, or sites where there is only one year.</summary>
    public required int Groups { get; init; }

    /// <summary>
    /// The score of foretold dates: e = foretold − observed [days], mean |e|, mean e, √(mean e²), and their percentile bootstrap intervals over whole years. A date
    /// that never came counts as the day after its season.
    /// <para>Source: science reference 5.3; Jolliffe and Stephenson 2012, Forecast Verification (MEMORY).</para>
    /// </summary>
    /// <param name="pairs">The pairs, in any order.</param>
    /// <param name="withinDays">The range of a hit, on either side [days], 0 or more.</param>
    /// <param name="drawBelow">The draws for the intervals, as <see cref="Bootstrap.Percentile"/> takes them.</param>
    /// <returns>The score; null where no pair has an observed date.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The range is negative.</exception>
    public static DateScore? Of(IReadOnlyList<DatePair> pairs, int withinDays, Func<int, int> drawBelow)
    {
        ArgumentNullException.ThrowIfNull(pairs);
        ArgumentOutOfRangeException.ThrowIfNegative(withinDays);
        DatePair[] observed = [.. pairs.Where(pair => pair.ErrorDays is not null)];
        if (observed.Length == 0) return null;
        IReadOnlyList<IReadOnlyList<double>> groups = ByYear(observed, pair => (double)pair.ErrorDays!.Value);
        double[] errors = [.. observed.Select(pair => (double)pair.ErrorDays!.Value)];
        int hits = errors.Count(error => Math.Abs(error) <= withinDays);
        return new DateScore
        {
            Seasons = observed.Length,
            WithinDays = withinDays,
            Hits = hits,
            Misses = observed.Length - hits,
            NeverForetold = observed.Count(pair => pair.Foretold is null),
            FalseOpenings = pairs.Count(pair => pair is { Observed: null, Foretold: not null }),
            LookedForInVain = pairs.Count(pair => pair.Observed is null),
            MeanAbsoluteErrorDays = MeanAbsolute(errors),
            MeanAbsoluteErrorInterval = Bootstrap.Percentile(groups, MeanAbsolute, drawBelow),
            BiasDays = errors.Average(),
            BiasInterval = Bootstrap.Percentile(groups, drawn => drawn.Average(), drawBelow),
            RootMeanSquareErrorDays = Math.Sqrt(errors.Average(error => error * error)),
            Groups = groups.Count,
        };
    }

    /// <summary>Values of pairs by the year, or by the site where all lie in one year.</summary>
    internal static IReadOnlyList<IReadOnlyList<T>> ByYear<T>(IReadOnlyCollection<DatePair> pairs, Func<DatePair, T> value)
    {
        bool oneYear = pairs.Select(pair => pair.Year).Distinct().Count() == 1;
        return [.. pairs
            .GroupBy(pair => oneYear ? pair.Site : $"{pair.Year:0000}", StringComparer.Ordinal)
            .OrderBy(group => group.Key, StringComparer.Ordinal)
            .Select(group => (IReadOnlyList<T>)[.. group.OrderBy(pair => pair.Site, StringComparer.Ordinal).Select(value)])];
    }

    internal static double MeanAbsolute(IReadOnlyList<double> errors) => errors.Average(Math.Abs);
}
