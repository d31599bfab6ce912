using System.Globalization;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Changes;

/// <summary>Makes the data of a notice's chart: the measures that decided the change, or else those that open the window.</summary>
internal static class NoticeCharts
{
    /// <summary>How many days before the day of the notice are drawn, and how many after it [days].</summary>
    private const int DaysBefore = 70, DaysAfter = 21, MostDaysAfter = 60;

    private const int MostPanels = 2;

    /// <summary>The chart; null where nothing that can be drawn has to do with the window, or nothing of it is known.</summary>
    /// <param name="window">The window.</param>
    /// <param name="because">Why it changed.</param>
    /// <param name="metrics">The site's weather as it is known on the day.</param>
    /// <param name="day">The day of the notice.</param>
    /// <param name="units">The reader's units.</param>
    /// <param name="likely">The days on which the window is likely to open; null where that is not said.</param>
    public static NoticeChart? Of(Window window, Because because, SiteMetrics metrics, DateOnly day, ReadersUnits units, DateSpan? likely = null)
    {
        var view = new SeasonView(metrics, window.Season);
        DrawnMeasure[] measures = Measures(Decided(because), view, units);
        if (measures.Length == 0) measures = Measures(window.Treatment.Opens.AndItsParts(), view, units);
        var days = new DateSpan(day.AddDays(-DaysBefore), day.AddDays(likely is { } span ? Math.Clamp(span.Last.DayNumber - day.DayNumber + 3, DaysAfter, MostDaysAfter) : DaysAfter));
        var panels = new List<ChartPanel>();
        var words = new List<string>();
        // Several limits of one measure, such as two temperatures of the same soil, share a panel: the column is the same one.
        foreach (IGrouping<double[], DrawnMeasure> same in measures.GroupBy(measure => measure.Values).Take(MostPanels))
        {
            DrawnMeasure measure = same.First();
            ChartCurve curve = ChartCurves.Of(metrics, measure.Values, days, measure.Shown);
            int last = LastKnown(curve);
            if (last < 1) continue;
            panels.Add(new ChartPanel($"{measure.Title} [{measure.Unit}]", [.. same.SelectMany(each => each.Limits).Select(limit => Math.Round(measure.Shown(limit), 2)).Distinct()], curve));
            words.Add(Words(measure, [.. same.Select(each => each.LimitWords).Distinct(StringComparer.Ordinal)], curve, last, days.First.AddDays(last), metrics));
        }

        if (panels.Count == 0) return null;
        if (likely is not { } opening) return new NoticeChart(days.First, day, panels, string.Join(' ', words));
        words.Add($"It is likely to open from {Wording.Day(opening.First)} to {Wording.Day(opening.Last)}.");
        return new NoticeChart(days.First, day, panels, string.Join(' ', words)) { LikelyFrom = opening.First, LikelyUntil = opening.Last };
    }

    private static DrawnMeasure[] Measures(IEnumerable<Condition> conditions, SeasonView view, ReadersUnits units) =>
        [.. conditions.OrderBy(condition => condition is SoilTemperatureCondition ? 0 : condition is HeatSumCondition ? 1 : 2).Select(condition => condition.Measure(view, units)).OfType<DrawnMeasure>()];

    private static IEnumerable<Condition> Decided(Because because) => because switch
    {
        SeveralBecause several => several.Parts.SelectMany(Decided),
        SoilTemperatureBecause soil => [soil.Condition],
        HeatSumBecause heat => [heat.Condition],
        GrowthPotentialBecause growth => [growth.Condition],
        AirTemperatureBecause air => [air.Condition],
        _ => [],
    };

    private static int LastKnown(ChartCurve curve)
    {
        for (int i = curve.Now.Count - 1; i >= 0; i--)
        {
            if (curve.Now[i] is not null) return i;
        }

        return -1;
    }

    private static string Words(DrawnMeasure measure, string[] limits, ChartCurve curve, int last, DateOnly day, SiteMetrics metrics)
    {
        string value = measure.InWords(measure.Values[metrics.Series.IndexOf(day)]);
        string usual = curve.Low.Count == 0
            ? $"fewer than {SiteClimate.SeasonsNeeded} earlier years are known, so no usual range is shown"
            : $"usual at this date are {Whole(curve.Low[last])} to {Whole(curve.High[last])} {measure.Unit} in eight of ten earlier years";
        return $"{Wording.Capital(measure.Name)}: {value} on {Wording.Day(day)}; looked for is {Wording.Alternatives(limits)}; {usual}.";
    }

    private static string Whole(double value) => Math.Round(value, MidpointRounding.AwayFromZero).ToString(CultureInfo.InvariantCulture);
}
