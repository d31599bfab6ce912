using System.Globalization;
using GddWatch.Agronomy.Backtesting;
using GddWatch.Agronomy.Backtesting.Fitting;
using GddWatch.Agronomy.Quantities;
using GddWatch.Commands.Output;
using Spectre.Console;

namespace GddWatch.Commands.Backtesting;

/// <summary>A fit as people read it.</summary>
internal static class FitForPeople
{
    public static void Show(string name, DateFit fit, string source, ReadersUnits units, Terminal terminal)
    {
        TextWriter output = terminal.Output;
        DateModel model = fit.Model;
        int first = fit.Events.Min(each => each.Season.Year), last = fit.Events.Max(each => each.Season.Year);
        output.WriteLine();
        output.WriteLine($"{FitModels.InWords(model, units)}: fitted to {fit.Events.Count} dates of {fit.Years} seasons ({first} to {last}) at {(fit.Sites == 1 ? "1 site" : $"{fit.Sites} sites")}.");
        if (fit.LeftOut.Count > 0) output.WriteLine($"Left out, for want of weather in their season or because they lie outside it: {string.Join(", ", fit.LeftOut.Take(8).Select(each => $"{each.Site} {Dates.Iso(each.Day)}"))}{(fit.LeftOut.Count > 8 ? $" and {fit.LeftOut.Count - 8} more" : "")}.");
        terminal.Tables().Write(Criteria(fit, units));
        FittedDates best = fit.Best;
        output.WriteLine(Invariant($"The mean date of the other seasons is off by {fit.MeanDate.YearLeftOutErrorDays:0.0} days; this fit, on seasons left out, by {best.YearLeftOutErrorDays:0.0} days{Nearer(fit)}."));
        if (fit.MeanDate.SiteLeftOutErrorDays is { } bySite && best.SiteLeftOutErrorDays is { } ownBySite) output.WriteLine(Invariant($"At a site left out, the mean date of the others is off by {bySite:0.0} days; this fit by {ownBySite:0.0} days."));
        output.WriteLine(Invariant($"How flat: {Second(model)} from {Grid(fit, fit.Flat.LowestGridValue, units)} to {Grid(fit, fit.Flat.HighestGridValue, units)}, each with its own threshold, is within {fit.Flat.WithinDays} days (root mean square) of the best; with {Grid(fit, best.GridValue, units)}, thresholds from {Threshold(fit, fit.Flat.LowestThresholdAtBest, units)} to {Threshold(fit, fit.Flat.HighestThresholdAtBest, units)} are."));
        if (fit.ClosedForm is { } closed)
        {
            output.WriteLine($"The closed formulae of Yang, Logan and Coffey 1995, which hold only where no day lies below the base, give: least deviation in heat {Base(closed.LeastDeviationInHeatC, units)}, in days {Base(closed.LeastDeviationInDaysC, units)}, least coefficient of variation {Base(closed.LeastCoefficientOfVariationC, units)}, no slope {Base(closed.NoSlopeC, units)}.");
        }

        foreach (string caution in Cautions(fit)) output.WriteLine(caution);
        output.WriteLine();
        output.WriteLine($"# For \"{name}\" in config/treatments.yaml, if you choose to put it there; nothing was changed.");
        output.WriteLine(Invariant($"# {FitModels.InWords(model, units)}. Fitted by the least error in days to {fit.Events.Count} dates of {fit.Years} seasons, {first} to {last}; seasons left out"));
        output.WriteLine(Invariant($"# were off by {best.YearLeftOutErrorDays:0.0} days in the mean (the mean date of the others: {fit.MeanDate.YearLeftOutErrorDays:0.0} days). Source: own dates, {source}."));
        output.WriteLine("opens:");
        output.WriteLine($"  {FitSnippet.Of(model.ToCondition(best.GridValue, best.Threshold), units)}");
    }

    private static Table Criteria(DateFit fit, ReadersUnits units)
    {
        Table table = new Table().Border(TableBorder.Simple).AddColumns(
            "By", fit.Model.IsHeatSum ? "Base" : "Mean over", "95 %", "Threshold", "95 %", "Fitted, off by", "Seasons left out", "Late", "Sites left out");
        foreach (FittedDates each in fit.ByCriterion)
        {
            table.AddRow(
                FitModels.InWords(each.Criterion),
                FitModels.GridInWords(fit.Model, each.GridValue, units),
                each.GridInterval is { } grid ? $"{Grid(fit, grid.Low, units)} to {Grid(fit, grid.High, units)}" : "-",
                FitModels.ThresholdInWords(fit.Model, each.Threshold, units),
                each.ThresholdInterval is { } threshold ? $"{Threshold(fit, threshold.Low, units)} to {Threshold(fit, threshold.High, units)}" : "-",
                Invariant($"{each.FittedErrorDays:0.0} days"),
                Invariant($"{each.YearLeftOutErrorDays:0.0} days"),
                Invariant($"{each.YearLeftOutBiasDays:+0.0;-0.0;0.0} days"),
                each.SiteLeftOutErrorDays is { } bySite ? Invariant($"{bySite:0.0} days") : "-");
        }

        return table;
    }

    private static IEnumerable<string> Cautions(DateFit fit)
    {
        if (fit.NearerThanMeanDate is not { } nearer || nearer.Low <= 0) yield return "Caution: on seasons left out it is not shown to be nearer than the mean date; more seasons may tell.";
        if (fit.Years < Bootstrap.FewGroups) yield return $"Caution: {fit.Years} seasons are few; the intervals say little.";
        IReadOnlyList<double> grid = fit.Model.Grid;
        string[] atEdge = [.. fit.ByCriterion.Where(each => each.GridValue == grid[0] || each.GridValue == grid[^1]).Select(each => FitModels.InWords(each.Criterion))];
        if (atEdge.Length > 0) yield return $"Caution: {string.Join(", ", atEdge)} chose the end of what was tried, so {(atEdge.Length == 1 ? "its" : "their")} {(fit.Model.IsHeatSum ? "base" : "averaging")} is not to be relied on.";
        yield return $"Intervals: {Bootstrap.UsualDraws} draws of whole seasons, seed {PastSeasons.Seed}. A threshold belongs to its base, its method and its start.";
    }

    private static string Nearer(DateFit fit)
    {
        double days = fit.MeanDate.YearLeftOutErrorDays - fit.Best.YearLeftOutErrorDays;
        return fit.NearerThanMeanDate is { } interval ? Invariant($", nearer by {days:0.0} days (95 % interval {interval.Low:0.0} to {interval.High:0.0})") : Invariant($", nearer by {days:0.0} days");
    }

    private static string Second(DateModel model) => model.IsHeatSum ? "a base" : "averaging over";

    private static string Grid(DateFit fit, double value, ReadersUnits units) => fit.Model.IsHeatSum ? FitModels.GridInWords(fit.Model, value, units) : Agronomy.Treatments.Wording.Days((int)Math.Round(value));

    private static string Threshold(DateFit fit, double value, ReadersUnits units) => FitModels.ThresholdInWords(fit.Model, value, units);

    private static string Base(double celsius, ReadersUnits units) => celsius is > -30 and < 40 ? Agronomy.Treatments.Wording.Temperature(celsius, units) : "no sensible base";

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
