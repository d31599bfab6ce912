using GddWatch.Agronomy.Backtesting.Rivals;
using GddWatch.Agronomy.Backtesting.Variants;
using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Backtesting;

/// <summary>All that a backtest takes from one site's weather; once its reasons are made (<see cref="WithReasonsMade"/>) it needs the weather no more.</summary>
/// <param name="Site">The site.</param>
/// <param name="Windows">The windows of all treatments over all seasons.</param>
/// <param name="RunningMeans">When the rule on a running mean of air temperature would have named the day, by treatment and year.</param>
/// <param name="Variants">The seasons of the variants that were asked for.</param>
/// <param name="Soil">Soil temperature at 5 cm, 7-day mean, in the last year beside the earlier ones [°C]; null where it was not asked for or is not known.</param>
/// <param name="HeatSum">Heat above 10 °C (50 °F) from the year's start, simple average, likewise [°C-days].</param>
public sealed record SiteBacktest(
    Site Site,
    IReadOnlyList<Window> Windows,
    IReadOnlyDictionary<(string Treatment, int Year), DateOnly> RunningMeans,
    IReadOnlyList<VariantSeasons> Variants,
    YearRange? Soil,
    YearRange? HeatSum)
{
    private const int SoilMeanDays = 7;
    private static readonly Depth SoilDepth = Depth.FromCentimetres(5);
    private static readonly AnnualDay YearStart = AnnualDay.Of(1, 1);
    private static readonly HeatSumDefinition GeneralHeat =
        new(Temperature.FromCelsius(10), null, DegreeDayMethod.SimpleAverage, DegreeDayCutoff.None, YearStart);

    /// <summary>The same with every reason made now, so that the weather behind it can be let go.</summary>
    public SiteBacktest WithReasonsMade() => this with
    {
        Windows = [.. Windows.Select(window => window.WithReasonsMade())],
        Variants = [.. Variants.Select(variant => variant with { Seasons = [.. variant.Seasons.Select(season => new SeasonDates(season.Window.WithReasonsMade()))] })],
    };

    /// <summary>Adds to windows that are judged already what else is taken from a site's weather.</summary>
    /// <param name="metrics">The site's weather.</param>
    /// <param name="windows">Its windows, as <see cref="Backtest.Seasons"/> gives them.</param>
    /// <param name="variants">The variants of treatments that are looked at, each with what was varied; those for other turf are passed over.</param>
    /// <param name="withRivals">Whether the dates of the rule on a running mean are taken too.</param>
    /// <param name="withYear">Whether the course of the last year is taken too.</param>
    public static SiteBacktest Of(
        SiteMetrics metrics, IReadOnlyList<Window> windows, IReadOnlyList<(Treatment Variant, IReadOnlyList<Variation> Variations)> variants, bool withRivals, bool withYear)
    {
        ArgumentNullException.ThrowIfNull(metrics);
        ArgumentNullException.ThrowIfNull(windows);
        ArgumentNullException.ThrowIfNull(variants);
        var means = new Dictionary<(string, int), DateOnly>();
        foreach (IGrouping<string, Window> treatment in withRivals ? windows.GroupBy(window => window.Treatment.Id, StringComparer.Ordinal) : [])
        {
            if (RivalDates.RunningMeanOf(treatment.First().Treatment) is not { } rule) continue;
            foreach (Window window in treatment)
            {
                if (RivalDates.RunningMean(rule, metrics, window.Season) is { } day) means.Add((treatment.Key, window.Season.Year), day);
            }
        }

        AnnualDay start = metrics.Site.Hemisphere.Place(YearStart);
        return new SiteBacktest(
            metrics.Site,
            windows,
            means,
            [.. variants
                .Where(each => each.Variant.IsFor(metrics.Site))
                .Select(each => new VariantSeasons(each.Variant.Id, each.Variations, [.. Backtest.Seasons([each.Variant], metrics).Select(window => new SeasonDates(window))]))],
            withYear ? YearRange.Of(metrics.Series, metrics.SoilMeans(SoilDepth, SoilMeanDays), start) : null,
            withYear ? YearRange.Of(metrics.Series, metrics.HeatSumColumn(GeneralHeat), start) : null);
    }
}
