namespace GddWatch.Agronomy.Backtesting;

/// <summary>
/// Confidence intervals by drawing the groups again. What is drawn is whole years, since the sites of a year share its weather (or whole sites, where there is
/// one year only). The core has no chance of its own: whoever calls hands it the draws, from a seed that is stated beside the result.
/// </summary>
public static class Bootstrap
{
    /// <summary>How often is drawn where nothing else is said.</summary>
    public const int UsualDraws = 2000;

    /// <summary>The confidence where nothing else is said.</summary>
    public const double UsualLevel = 0.95;

    /// <summary>With fewer groups than this an interval says little, and whoever shows it says so. Source: science reference 5.3 (DESIGN).</summary>
    public const int FewGroups = 10;

    /// <summary>
    /// The percentile interval of a statistic: of B draws of as many groups with replacement, the (1 − level)/2 and (1 + level)/2 quantiles of type 8 of the
    /// statistic. A draw for which the statistic is NaN is left out.
    /// <para>Source: Efron and Tibshirani 1993, An Introduction to the Bootstrap, chapter 13 (MEMORY).</para>
    /// </summary>
    /// <param name="groups">The groups, each with its values.</param>
    /// <param name="statistic">What is reckoned from the values of the drawn groups.</param>
    /// <param name="drawBelow">Gives a whole number from 0 to below its argument, each with the same chance.</param>
    /// <param name="draws">How often is drawn.</param>
    /// <param name="level">The confidence, between 0 and 1.</param>
    /// <returns>The interval; null with fewer than two groups, or where fewer than half of the draws gave a number.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The level is not between 0 and 1, or fewer than 100 draws are asked for.</exception>
    public static ConfidenceInterval? Percentile<T>(
        IReadOnlyList<IReadOnlyList<T>> groups, Func<IReadOnlyList<T>, double> statistic, Func<int, int> drawBelow, int draws = UsualDraws, double level = UsualLevel)
    {
        ArgumentNullException.ThrowIfNull(groups);
        ArgumentNullException.ThrowIfNull(statistic);
        if (groups.Count < 2) return null;
        var drawn = new List<T>();
        var found = new List<double>(draws);
        foreach (int[] chosen in Resamples(groups.Count, drawBelow, draws))
        {
            drawn.Clear();
            foreach (int group in chosen) drawn.AddRange(groups[group]);
            double value = statistic(drawn);
            if (!double.IsNaN(value)) found.Add(value);
        }

        return Interval(found, draws, level);
    }

    /// <summary>The groups of each draw, by their places.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 100 draws are asked for, which say nothing of the ends.</exception>
    public static IEnumerable<int[]> Resamples(int groups, Func<int, int> drawBelow, int draws = UsualDraws)
    {
        ArgumentNullException.ThrowIfNull(drawBelow);
        if (draws < 100) throw new ArgumentOutOfRangeException(nameof(draws), draws, "An interval needs at least 100 draws.");
        return Draw();

        IEnumerable<int[]> Draw()
        {
            for (int draw = 0; draw < draws; draw++)
            {
                var chosen = new int[groups];
                for (int i = 0; i < groups; i++) chosen[i] = drawBelow(groups);
                yield return chosen;
            }
        }
    }

    /// <summary>The percentile interval of what the draws gave; null where fewer than half of them gave a number.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The level is not between 0 and 1.</exception>
    public static ConfidenceInterval? Interval(IReadOnlyList<double> found, int draws, double level = UsualLevel)
    {
        ArgumentNullException.ThrowIfNull(found);
        if (level is not (> 0 and < 1)) throw new ArgumentOutOfRangeException(nameof(level), level, "A confidence lies between 0 and 1.");
        if (found.Count * 2 < draws || found.Count == 0) return null;
        return new ConfidenceInterval(Quantiles.Of(found, (1 - level) / 2), Quantiles.Of(found, (1 + level) / 2), level);
    }
}
