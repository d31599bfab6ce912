using GddWatch.Agronomy.Backtesting.Rivals;
using GddWatch.Agronomy.Backtesting.Scores;

namespace GddWatch.Agronomy.Backtesting.Variants;

/// <summary>How the openings of a treatment move, and how well they do, when a part of its opening is another.</summary>
public sealed record VariantOutcome
{
    /// <summary>The treatment's id.</summary>
    public required string Treatment { get; init; }

    /// <summary>What was varied.</summary>
    public required IReadOnlyList<Variation> Variations { get; init; }

    /// <summary>How many seasons were judged, over all sites.</summary>
    public required int Seasons { get; init; }

    /// <summary>How many of them opened for certain.</summary>
    public required int Opened { get; init; }

    /// <summary>How many never opened.</summary>
    public required int NeverOpened { get; init; }

    /// <summary>How often windows opened again within their season, over all seasons.</summary>
    public required int Reopenings { get; init; }

    /// <summary>How many days later than the treatment as it is, in the mean of the seasons in which both opened; negative is earlier [days]; null where none did.</summary>
    public required double? MeanDaysLater { get; init; }

    /// <summary>The range of those differences [days]; null where no season has both.</summary>
    public required (int Least, int Most)? DaysLaterRange { get; init; }

    /// <summary>The summary at each site.</summary>
    public required IReadOnlyList<BacktestSummary> Sites { get; init; }

    /// <summary>The score against what was seen; null where nothing was.</summary>
    public required DateScore? Score { get; init; }

    /// <summary>What a variant's seasons come to, beside the seasons of the treatment as it is.</summary>
    /// <param name="variant">The variant's seasons at all sites.</param>
    /// <param name="asItIs">The treatment's own seasons, compared with what was seen.</param>
    /// <param name="withinDays">The range of a hit [days].</param>
    /// <param name="drawBelow">The draws, as <see cref="Bootstrap.Percentile"/> takes them.</param>
    public static VariantOutcome Of(VariantSeasons variant, TreatmentComparison asItIs, int withinDays, Func<int, int> drawBelow)
    {
        ArgumentNullException.ThrowIfNull(variant);
        ArgumentNullException.ThrowIfNull(asItIs);
        Dictionary<(string, int), ComparedSeason> own = asItIs.Seasons.ToDictionary(season => (season.Dates.Site, season.Dates.Year));
        int[] later = [.. variant.Seasons
            .Where(season => season.OpensForCertain is not null && own.GetValueOrDefault((season.Site, season.Year))?.Dates.OpensForCertain is not null)
            .Select(season => season.OpensForCertain!.Value.DayNumber - own[(season.Site, season.Year)].Dates.OpensForCertain!.Value.DayNumber)];
        DatePair[] pairs = [.. variant.Seasons
            .Where(season => own.TryGetValue((season.Site, season.Year), out ComparedSeason? compared) && (compared.Seen is not null || compared.LookedForInVain))
            .Where(season => !season.Window.MayHaveOpenedEarlier && !season.Window.CouldNotBeJudged)
            .Select(season => new DatePair(season.Site, season.Year, season.OpensForCertain, own[(season.Site, season.Year)].Seen, season.NeverCountsAs))];
        return new VariantOutcome
        {
            Treatment = variant.Treatment,
            Variations = variant.Variations,
            Seasons = variant.Seasons.Count,
            Opened = variant.Seasons.Count(season => season.OpensForCertain is not null),
            NeverOpened = variant.Seasons.Count(season => season.NeverOpened),
            Reopenings = variant.Seasons.Sum(season => season.Window.Reopenings),
            MeanDaysLater = later.Length == 0 ? null : later.Average(),
            DaysLaterRange = later.Length == 0 ? null : (later.Min(), later.Max()),
            Sites = [.. variant.Seasons.GroupBy(season => season.Site, StringComparer.Ordinal).Select(site => BacktestSummary.Of([.. site.Select(season => season.Window)]))],
            Score = DateScore.Of(pairs, withinDays, drawBelow),
        };
    }
}
