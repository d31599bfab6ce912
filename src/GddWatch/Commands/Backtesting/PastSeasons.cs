using GddWatch.Agronomy.Backtesting;
using GddWatch.Agronomy.Backtesting.Rivals;
using GddWatch.Agronomy.Backtesting.Scores;
using GddWatch.Agronomy.Backtesting.Variants;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Windows;
using Region = GddWatch.Agronomy.Places.Region;

namespace GddWatch.Commands.Backtesting;

/// <summary>The past seasons of a region, and what follows from them; what costs work is made when it is first asked for.</summary>
internal sealed class PastSeasons
{
    /// <summary>The seed of all draws; stated beside every interval.</summary>
    public const int Seed = 1995;

    private readonly Lazy<IReadOnlyList<BacktestSummary>> summaries;
    private readonly Lazy<IReadOnlyList<TreatmentComparison>> comparisons;
    private readonly Lazy<IReadOnlyDictionary<string, IReadOnlyList<RivalScore>>> scores;
    private readonly Lazy<IReadOnlyList<VariantOutcome>> whatIf;

    public PastSeasons(Region region, IReadOnlyList<SiteBacktest> sites, ObservedDates observed, int withinDays)
    {
        Region = region;
        Sites = sites;
        Windows = [.. sites.SelectMany(site => site.Windows)];
        WithinDays = withinDays;
        summaries = new(() => [.. Windows.GroupBy(window => (window.Site.Id, window.Treatment.Id)).Select(group => BacktestSummary.Of([.. group]))]);
        comparisons = new(() => Compare(observed));
        scores = new(() => Comparisons.Where(each => each.HasObservations).ToDictionary(each => each.Treatment.Id, each => RivalScore.Of(each, withinDays, FreshDraws)));
        whatIf = new(() => [.. Variants().Select(variant => VariantOutcome.Of(variant, Comparisons.Single(each => each.Treatment.Id == variant.Treatment), withinDays, FreshDraws()))]);
    }

    public Region Region { get; }

    public IReadOnlyList<SiteBacktest> Sites { get; }

    /// <summary>The windows, site by site, treatment by treatment, year by year.</summary>
    public IReadOnlyList<Window> Windows { get; }

    /// <summary>The range of a hit, on either side [days].</summary>
    public int WithinDays { get; }

    public IReadOnlyList<BacktestSummary> Summaries => summaries.Value;

    /// <summary>Each treatment beside the other ways and what was seen, in the order of the treatments.</summary>
    public IReadOnlyList<TreatmentComparison> Comparisons => comparisons.Value;

    /// <summary>The scores by the treatment's id, where anything was seen.</summary>
    public IReadOnlyDictionary<string, IReadOnlyList<RivalScore>> Scores => scores.Value;

    /// <summary>The variants that were asked for.</summary>
    public IReadOnlyList<VariantOutcome> WhatIf => whatIf.Value;

    public static Func<int, int> FreshDraws() => new Random(Seed).Next;

    private TreatmentComparison[] Compare(ObservedDates observed)
    {
        Dictionary<string, Dictionary<(string, int), DateOnly>> means = Sites
            .SelectMany(site => site.RunningMeans.Select(mean => (mean.Key.Treatment, Key: (site.Site.Id, mean.Key.Year), mean.Value)))
            .GroupBy(each => each.Treatment, StringComparer.Ordinal)
            .ToDictionary(group => group.Key, group => group.ToDictionary(each => each.Key, each => each.Value));
        return [.. Windows
            .GroupBy(window => window.Treatment.Id, StringComparer.Ordinal)
            .Select(group => TreatmentComparison.Of(group.First().Treatment, [.. group], means.GetValueOrDefault(group.Key, []), observed))];
    }

    private IEnumerable<VariantSeasons> Variants() => Sites
        .SelectMany(site => site.Variants)
        .GroupBy(variant => (variant.Treatment, string.Join(';', variant.Variations.Select(each => $"{each.Part}={each.Value:R}"))))
        .Select(group => group.First() with { Seasons = [.. group.SelectMany(each => each.Seasons)] });
}
