using GddWatch.Validation.Dates;
using GddWatch.Validation.Probes;
using GddWatch.Validation.Scoring;

namespace GddWatch.Validation.Report;

/// <summary>What a reader should take away, with what was asked for beside what was reached.</summary>
internal static class SummaryPart
{
    public static void Write(ReportPage page, FigureList figures, Evidence evidence)
    {
        Score year = Score.Of(evidence.Default, evidence.Stations, StationGroup.Humid, PartOfYear.Year);
        Score air = Score.Of(evidence.AirOfFiveDays, evidence.Stations, StationGroup.Humid, PartOfYear.Year);
        int first = evidence.Stations.Min(station => station.Series.FirstDay.Year), last = evidence.Stations.Max(station => station.Series.LastDay.Year);
        page.Text(
            $"The default model estimates the daily mean soil temperature under turf from the day's lowest and highest air temperature, and from precipitation where it is known. Here it is compared with "
            + $"{evidence.Stations.Count} stations of the US Climate Reference Network that measured it, {first} to {last}. Every figure of the default model is from stations left out: before a station is estimated, all "
            + "constants are fitted anew on the other stations, so that it is treated like a lawn that nobody has measured.");
        page.Text(
            $"In short: with precipitation, at humid stations the typical error is {Shown.Plain(year.PooledRmseC)} °C at 5 cm, with no bias worth naming ({Shown.Signed(year.PooledBiasC)} °C). "
            + $"The 5-day mean of the air, which people use today, is off by {Shown.Plain(air.PooledRmseC)} °C. {DatesInShort(evidence)}");
        page.Table("What was aimed at, and what was reached", ["Measure", "aimed at", "all days\ntogether", "mean over\nstations", "reached"], Goals(figures, evidence));
        page.Note(
            "A caution on method: which terms the model has was chosen by looking at errors of these same stations, so that a new network may show a little more error than the "
            + "table, as the places elsewhere below do in their own ways. How well constants of one half of the stations do on the other half is printed by soil-fit.");
        page.Note(
            "The surface at most of these stations is natural or mown grass that rain waters. Irrigated turf in a dry summer stays cooler than the estimate says (see Hastings Tract below); there, take readings with a soil thermometer.");
    }

    private static string DatesInShort(Evidence evidence)
    {
        DateComparison comparison = new(evidence.Stations, HoldingRule.Recommended.SlowMeanDays);
        double own = Passage.All.Average(passage => comparison.Between(evidence.Default.MeanC, passage, HoldingRule.Recommended).MeanAbsolute);
        double air = Passage.All.Average(passage => comparison.Between(evidence.DailyAirC, passage, HoldingRule.Recommended).MeanAbsolute);
        double fixedDate = Passage.All.Average(passage => comparison.FixedDate(passage, HoldingRule.Recommended, otherYearsOnly: true).MeanAbsolute);
        return $"Over five thresholds, by the rule \"{HoldingRule.Recommended.Name}\", its dates are {Shown.Plain(own, 1)} days off on average, those of the air mean {Shown.Plain(air, 1)}, and a fixed date learnt from years of measurement at the spot {Shown.Plain(fixedDate, 1)}.";
    }

    private static IEnumerable<IReadOnlyList<string>> Goals(FigureList figures, Evidence evidence) =>
    [
        .. Errors(figures, evidence, evidence.Default, "with precipitation"),
        .. Errors(figures, evidence, evidence.AirTemperaturesOnly, "air temperatures only"),
        .. Ranges(figures, evidence, evidence.Default, "with precipitation"),
        .. Ranges(figures, evidence, evidence.AirTemperaturesOnly, "air temperatures only"),
        .. ProbePlan.All.Where(plan => plan.DaysBefore.Count == 3).Select(plan => Probed(figures, evidence, plan)),
    ];

    private static IEnumerable<IReadOnlyList<string>> Errors(FigureList figures, Evidence evidence, SoilEstimate estimate, string input)
    {
        foreach (PartOfYear part in PartOfYear.Judged)
        {
            Score score = Score.Of(estimate, evidence.Stations, StationGroup.Humid, part);
            yield return Goal(figures, $"Typical error at 5 cm, humid stations, {part.Name}, {input}", "at most 1.45 °C", score.PooledRmseC, score.StationRmseC, value => value <= 1.45);
            yield return Goal(figures, $"Bias at 5 cm, humid stations, {part.Name}, {input}", "within 0.3 °C", score.PooledBiasC, score.StationBiasC, value => Math.Abs(value) <= 0.3);
        }

        Score all = Score.Of(estimate, evidence.Stations, StationGroup.All, PartOfYear.Year);
        yield return Goal(figures, $"Typical error at 5 cm, all stations, year, {input}", "at most 1.72 °C", all.PooledRmseC, all.StationRmseC, value => value <= 1.72);
    }

    private static IEnumerable<IReadOnlyList<string>> Ranges(FigureList figures, Evidence evidence, SoilEstimate estimate, string input)
    {
        foreach (StationGroup group in (StationGroup[])[StationGroup.Humid, StationGroup.Dry, StationGroup.All])
        {
            Score score = Score.Of(estimate, evidence.Stations, group, PartOfYear.Year);
            string name = $"Share of days in the 80 % range, {group.Name} stations, {input}";
            figures.Add("goals", name, "", "", "pooled", score.Coverage, "1", score.Days);
            yield return [name, "75 to 85 %", Shown.Share(score.Coverage), "", score.Coverage is >= 0.75 and <= 0.85 ? "yes" : "no"];
        }
    }

    private static List<string> Probed(FigureList figures, Evidence evidence, ProbePlan plan)
    {
        (double pooled, double station) = ProbesPart.AfterReadingsC(evidence, plan);
        return Goal(figures, $"Typical error in the next 30 days, humid stations, {plan.Name}", "at most 1.05 °C", pooled, station, value => value <= 1.05);
    }

    private static List<string> Goal(FigureList figures, string name, string aim, double pooled, double station, Func<double, bool> reached)
    {
        bool signed = name.StartsWith("Bias", StringComparison.Ordinal);
        string Show(double value) => (signed ? Shown.Signed(value) : Shown.Plain(value)) + " °C";
        figures.Add("goals", name, "", "", "pooled", pooled, "degC", 0);
        return [name, aim, Show(pooled), Show(station), reached(pooled) && reached(station) ? "yes" : "no"];
    }
}
