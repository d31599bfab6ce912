using GddWatch.Validation.Probes;

namespace GddWatch.Validation.Report;

/// <summary>What a few readings of a soil thermometer do to the next 30 days.</summary>
internal static class ProbesPart
{
    public static void Write(ReportPage page, FigureList figures, Evidence evidence)
    {
        page.Heading("What probe readings do");
        page.Text(
            "Somebody pushes a thermometer into the lawn a few times; the estimate is corrected by what was read, and the correction fades over months. Here this is played at every station on every tenth day: "
            + "the readings are the measured daily means, so many days before it, and the 30 days after it are scored with the correction and without: after a last reading 4 days before, those are the 5th to the 34th day after that reading. A reading far from what was expected is doubted: it counts less, "
            + "and the person is told. The stated range shrinks as readings agree, and must still hold 80 %. A day can be judged in several plays.");
        page.Table(
            "Typical error in the 30 days after the day from which the readings are counted back [°C]; all days together (mean over stations)",
            ["Readings", "humid\nwithout", "humid\nwith", "all\nwithout", "all\nwith", "range holds\nhumid", "readings\ndoubted", "days judged\nhumid"],
            ProbePlan.All.Select(plan => Row(figures, evidence, plan)));
        page.Text("Readings take away what stays the same for weeks at a place, such as the stations' biases pictured above; what changes from day to day they cannot.");
    }

    /// <summary>The error at humid stations after a plan's readings [°C]: pooled, and the mean of the stations' own.</summary>
    public static (double PooledC, double StationC) AfterReadingsC(Evidence evidence, ProbePlan plan)
    {
        ProbeScore[] humid = [.. ProbeTrial.Run(plan, evidence.Default, evidence.Stations).Where(score => score.IsHumid)];
        return (ProbeScore.Pooled(humid, score => score.SquaresAfter), ProbeScore.StationMean(humid, score => score.SquaresAfter));
    }

    private static List<string> Row(FigureList figures, Evidence evidence, ProbePlan plan)
    {
        IReadOnlyList<ProbeScore> all = ProbeTrial.Run(plan, evidence.Default, evidence.Stations);
        ProbeScore[] humid = [.. all.Where(score => score.IsHumid)];
        List<string> row = [(plan == ProbePlan.ThreeInThreeWeeks ? "*" : "") + plan.Name];
        foreach ((string group, IReadOnlyList<ProbeScore> scores) in ((string, IReadOnlyList<ProbeScore>)[])[("humid", humid), ("all", all)])
        {
            row.Add(Cell(figures, plan, group, "without readings", scores, score => score.SquaresBefore));
            row.Add(Cell(figures, plan, group, "with readings", scores, score => score.SquaresAfter));
        }

        double held = humid.Sum(score => score.Held) / (double)humid.Sum(score => score.Days);
        double doubted = humid.Sum(score => score.Doubted) / (double)humid.Sum(score => score.Readings);
        figures.Add("probe readings", plan.Name, "humid", "next 30 days", "share held", held, "1", humid.Sum(score => score.Days));
        figures.Add("probe readings", plan.Name, "humid", "next 30 days", "share of readings doubted", doubted, "1", humid.Sum(score => score.Readings));
        return [.. row, Shown.Share(held), (doubted * 100).ToString("F1") + "\u00a0%", humid.Sum(score => score.Days).ToString()];
    }

    private static string Cell(
        FigureList figures, ProbePlan plan, string group, string way, IReadOnlyList<ProbeScore> scores, Func<ProbeScore, double> squares)
    {
        double pooled = ProbeScore.Pooled(scores, squares), station = ProbeScore.StationMean(scores, squares);
        figures.Add("probe readings", $"{plan.Name}, {way}", group, "next 30 days", "RMSE pooled", pooled, "degC", scores.Sum(score => score.Days));
        figures.Add("probe readings", $"{plan.Name}, {way}", group, "next 30 days", "RMSE station mean", station, "degC", scores.Sum(score => score.Days));
        return $"{Shown.Plain(pooled)} ({Shown.Plain(station)})";
    }
}
