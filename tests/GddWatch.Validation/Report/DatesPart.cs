using GddWatch.Validation.Dates;
using GddWatch.Validation.Scoring;

namespace GddWatch.Validation.Report;

/// <summary>Dates on which soil temperature passes the thresholds that windows wait for, from the estimate against from the measurement.</summary>
internal static class DatesPart
{
    public static void Write(ReportPage page, FigureList figures, Evidence evidence)
    {
        DateComparison comparison = new(evidence.Stations, HoldingRule.Recommended.SlowMeanDays);
        page.Heading("Window dates: what it is all for");
        page.Text(
            "The first day on which the 5-day mean of the soil temperature at 5 cm passes a threshold: rising, looked for from 2 January; falling, from 20 July. The date "
            + "from the estimate is set against the date from the measured soil, over all humid stations and years. Each cell is the mean error in days, with the median in brackets; "
            + "then how late (+) or early (−) it is on average.");
        page.Text(
            "Beside it stand the mean of the air, judged by the same rule, and fixed dates: the best one for each station, taken from the very years it is tested on (no one can do better with a fixed "
            + "date), the one from the station's other years, which is what a good local calendar knows, and one date for everybody. A soil sensor is needed to find any of these; the estimate needs none.");
        page.Text(
            "A season counts where both series have a date, neither is past the threshold when the search begins, and neither has a hole of more than ten days before its date. "
            + "The mean is above the median because of short warm spells in winter that one series catches and the other does not: such a season costs weeks. A rule that a short spell "
            + "cannot trip serves both: three days in a row, and the mean over 15 days at most 2 °C short of the threshold. By that rule the spring pre-emergent opens. The overseeding and the closings, "
            + "which short spells trip less, go by three of the last five days. The tables give both, the first day that the mean passes, without any holding, and three days in a row without the slower mean.");
        foreach (HoldingRule rule in (HoldingRule[])[HoldingRule.Recommended, HoldingRule.ThreeOfFive, HoldingRule.ThreeInARow, HoldingRule.FirstDay])
        {
            page.Table(
                $"Error of dates in days: {rule.Name}",
                ["Source", .. Passage.All.Select(passage => passage.Name)],
                [.. Rows(figures, evidence, comparison, rule), Seasons(evidence, comparison, rule)]);
        }

        page.Picture(Chart(comparison, evidence), $"One point a station and season; rule: {HoldingRule.Recommended.Name}. On the line both dates are the same.");
        page.Text(
            "More days in a row were tried too: they agree about as well or a little better, but open late. The next table sets the estimate's mean error against how much later than three days "
            + "in a row each rule opens in the measured series itself. Set apart are the rules that treatments use.");
        page.Table(
            "Mean error of the estimate in days / mean delay against three days in a row (median delay)",
            ["Rule", .. Passage.All.Select(passage => passage.Name), "mean\nerror"],
            ((HoldingRule[])[HoldingRule.FirstDay, HoldingRule.ThreeOfFive, HoldingRule.ThreeInARow, HoldingRule.Recommended, HoldingRule.FiveInARow, HoldingRule.TenInARow])
                .Select(rule => RuleRow(figures, evidence, comparison, rule)));
    }

    private static IEnumerable<IReadOnlyList<string>> Rows(FigureList figures, Evidence evidence, DateComparison comparison, HoldingRule rule)
    {
        (string Name, Func<Passage, DateErrors> Errors)[] sources =
        [
            ("*estimate (held out)", passage => comparison.Between(evidence.Default.MeanC, passage, rule)),
            ("estimate, air temperatures only", passage => comparison.Between(evidence.AirTemperaturesOnly.MeanC, passage, rule)),
            ("5-day air mean", passage => comparison.Between(evidence.DailyAirC, passage, rule)),
            ("best fixed date of each station", passage => comparison.FixedDate(passage, rule, otherYearsOnly: false)),
            ("fixed date from the station's other years", passage => comparison.FixedDate(passage, rule, otherYearsOnly: true)),
            ("one date for all", passage => comparison.OneDate(passage, rule)),
        ];
        foreach ((string name, Func<Passage, DateErrors> errors) in sources)
        {
            List<string> row = [name];
            foreach (Passage passage in Passage.All)
            {
                DateErrors found = errors(passage);
                row.Add($"{Shown.Plain(found.MeanAbsolute, 1)} ({Shown.Plain(found.MedianAbsolute, 0)}) {Shown.Signed(found.MeanSigned, 1)}");
                string plain = name.TrimStart('*');
                figures.Add($"dates, {rule.Name}", plain, "humid", passage.Name, "mean absolute error", found.MeanAbsolute, "days", found.Seasons);
                figures.Add($"dates, {rule.Name}", plain, "humid", passage.Name, "median absolute error", found.MedianAbsolute, "days", found.Seasons);
                figures.Add($"dates, {rule.Name}", plain, "humid", passage.Name, "mean signed error", found.MeanSigned, "days", found.Seasons);
                figures.Add($"dates, {rule.Name}", plain, "humid", passage.Name, "share within 7 days", found.WithinWeek, "1", found.Seasons);
            }

            yield return row;
        }
    }

    private static List<string> Seasons(Evidence evidence, DateComparison comparison, HoldingRule rule) =>
    [
        "station-seasons compared, estimate",
        .. Passage.All.Select(passage => comparison.Between(evidence.Default.MeanC, passage, rule).Seasons.ToString()),
    ];

    private static List<string> RuleRow(FigureList figures, Evidence evidence, DateComparison comparison, HoldingRule rule)
    {
        List<string> row = [(rule.InUse ? "*" : "") + rule.Name];
        double sum = 0;
        foreach (Passage passage in Passage.All)
        {
            DateErrors found = comparison.Between(evidence.Default.MeanC, passage, rule);
            (double mean, double median) = comparison.Delay(passage, rule, HoldingRule.ThreeInARow);
            row.Add($"{Shown.Plain(found.MeanAbsolute, 1)} / {Shown.Signed(mean, 1)} ({Shown.Signed(median, 0)})");
            figures.Add("holding rules", rule.Name, "humid", passage.Name, "mean absolute error", found.MeanAbsolute, "days", found.Seasons);
            figures.Add("holding rules", rule.Name, "humid", passage.Name, "mean delay in the measured series", mean, "days", found.Seasons);
            figures.Add("holding rules", rule.Name, "humid", passage.Name, "median delay in the measured series", median, "days", found.Seasons);
            sum += found.MeanAbsolute;
        }

        row.Add(Shown.Plain(sum / Passage.All.Count));
        return row;
    }

    private static byte[] Chart(DateComparison comparison, Evidence evidence)
    {
        List<(string, double[], double[])> series = [];
        foreach (Passage passage in Passage.All)
        {
            IReadOnlyList<(double Measured, double Stood)> pairs = comparison.Pairs(evidence.Default.MeanC, passage, HoldingRule.Recommended);
            series.Add((passage.Name, [.. pairs.Select(pair => pair.Measured)], [.. pairs.Select(pair => pair.Stood)]));
        }

        return Charts.Dates("Date from the estimate against date from the measured soil, humid stations", series);
    }
}
