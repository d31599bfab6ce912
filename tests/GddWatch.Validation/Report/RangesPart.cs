using GddWatch.Validation.Scoring;
using GddWatch.Validation.Weather;

namespace GddWatch.Validation.Report;

/// <summary>Whether the stated 80 % ranges hold 80 % of the days, and the figures at other depths.</summary>
internal static class RangesPart
{
    public static void Write(ReportPage page, FigureList figures, Evidence evidence)
    {
        page.Heading("Does the stated range hold?");
        page.Text(
            "Each day's estimate comes with a range that should hold the true value on four days of five. The table says on what share of the days it did, at stations left out of the fit. "
            + "75 to 85 % is good: lower would promise too much, higher would be needlessly vague. The few constants of the range itself were chosen so at these same stations and not refitted in the folds, "
            + "so that its share is a little flattered. Where the precipitation is not known the range is widened by the daily range of the air, which tells dry places only in part: there it may still be too narrow.");
        page.Table(
            "Share of days in the stated 80 % range, 5 cm",
            ["", "year", "Feb-May", "Aug-Oct"],
            from way in (IEnumerable<(string Name, SoilEstimate Estimate)>)[("with precipitation", evidence.Default), ("air temperatures only", evidence.AirTemperaturesOnly)]
            from kind in (StationGroup[])[StationGroup.Humid, StationGroup.Dry, StationGroup.All]
            select Row($"{kind.Name} stations, {way.Name}", figures, evidence, way.Estimate, kind));
        page.Text(Spread(figures, evidence));

        page.Heading("Other depths");
        page.Text("The constants were fitted at 5 cm only. What the same estimate says for 10 and 20 cm, at stations left out:");
        page.Table(
            "Error by depth, all station-days together [°C], and share of days in the 80 % range",
            ["Depth", .. from kind in Both from part in PartOfYear.Judged select $"{kind.Name}\n{part.Name}", "humid\nrange holds", "all\nrange holds"],
            from depth in (int[])[5, 10, 20] from rain in (bool[])[true, false] select DepthRow(figures, evidence, depth, rain));
    }

    private static readonly StationGroup[] Both = [StationGroup.Humid, StationGroup.All];

    private static List<string> Row(string name, FigureList figures, Evidence evidence, SoilEstimate estimate, StationGroup group)
    {
        List<string> row = [name];
        foreach (PartOfYear part in PartOfYear.Judged)
        {
            Score score = Score.Of(estimate, evidence.Stations, group, part);
            row.Add(Shown.Share(score.Coverage));
            figures.Add("80 % range at 5 cm", name, group.Name, part.Name, "share held", score.Coverage, "1", score.Days);
        }

        return row;
    }

    private static List<string> DepthRow(FigureList figures, Evidence evidence, int depthCm, bool rain)
    {
        SoilEstimate estimate = (rain ? evidence.HeldOut.WithRain : evidence.HeldOut.AirOnly)[depthCm];
        string name = $"{depthCm} cm, {(rain ? "with precipitation" : "air temperatures only")}";
        List<string> row = [name], shares = [];
        foreach (StationGroup group in Both)
        {
            foreach (PartOfYear part in PartOfYear.Judged)
            {
                Score score = Score.Of(estimate, evidence.Stations, group, part);
                row.Add($"{Shown.Plain(score.PooledRmseC)} ({Shown.Signed(score.PooledBiasC)})");
                figures.Add("depths", name, group.Name, part.Name, "RMSE pooled", score.PooledRmseC, "degC", score.Days);
                figures.Add("depths", name, group.Name, part.Name, "bias pooled", score.PooledBiasC, "degC", score.Days);
                figures.Add("depths", name, group.Name, part.Name, "share held", score.Coverage, "1", score.Days);
                if (part == PartOfYear.Year) shares.Add(Shown.Share(score.Coverage));
            }
        }

        return [.. row, .. shares];
    }

    private static string Spread(FigureList figures, Evidence evidence)
    {
        List<double> shares = [];
        foreach (MeasuredStation station in evidence.Stations.Where(station => station.IsHumid))
        {
            StationGroup alone = new(station.Name, other => other == station);
            double share = Score.Of(evidence.Default, evidence.Stations, alone, PartOfYear.Year).Coverage;
            figures.Add("80 % range at 5 cm by station", "default, held out", station.Name, "year", "share held", share, "1", 0);
            shares.Add(share);
        }

        shares.Sort();
        return $"It differs from place to place: at the humid station where it held least it was {Shown.Share(shares[0])}, at the middle one {Shown.Share(shares[shares.Count / 2])}, "
            + $"where it held most {Shown.Share(shares[^1])}. A station that is always a degree warmer than its weather suggests is outside the range more often; only readings of a probe can tell.";
    }
}
