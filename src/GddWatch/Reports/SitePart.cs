using System.Globalization;
using GddWatch.Agronomy.Backtesting;
using GddWatch.Agronomy.Quantities;

namespace GddWatch.Reports;

/// <summary>The last year of a site beside the years before.</summary>
internal sealed class SitePart(SiteBacktest site, ReadersUnits units, ChartDrawing drawing)
{
    private string DegreeUnit => units == ReadersUnits.UnitedStates ? "°F" : "°C";

    public SiteView View()
    {
        var charts = new List<ChartView>();
        if (site.Soil is { } soil)
        {
            string depth = units == ReadersUnits.UnitedStates ? "2 inches" : "5 cm";
            charts.Add(drawing.Draw(
                chart => Range(chart, $"soil at {depth}, 7-day mean [{DegreeUnit}]", soil, value => ReportText.Degrees(value, units), 0),
                $"Soil temperature at {depth} at {site.Site.Name} through {YearOf(soil)}: warmest {Highest(soil, units)}; the table below has it by month beside the earlier years.",
                $"Soil temperature at {depth}{(site.Site.SoilTemperature == Agronomy.Places.SoilSource.Measured ? ", measured" : ", estimated from the weather")}, mean of seven days, {YearOf(soil)} over {Earlier(soil)}."));
        }

        if (site.HeatSum is { } heat)
        {
            string above = units == ReadersUnits.UnitedStates ? "50 °F" : "10 °C";
            charts.Add(drawing.Draw(
                chart => Range(chart, $"heat above {above} [{DegreeUnit}-days]", heat, value => ReportText.Heat(value, units), 1),
                $"Heat above {above} at {site.Site.Name} from the start of {YearOf(heat)}, rising to {ReportText.HeatText(heat.Now.Where(double.IsFinite).DefaultIfEmpty(double.NaN).Last(), units)}; the table below has it by month beside the earlier years.",
                $"Heat above {above} from the year's start, simple average, {YearOf(heat)} over {Earlier(heat)}."));
        }

        return new SiteView(site.Site.Name, charts, [ByMonth()]);
    }

    private TableView ByMonth()
    {
        YearRange any = (site.Soil ?? site.HeatSum)!;
        var rows = new List<RowView>();
        for (DateOnly month = any.First; month < any.First.AddDays(360); month = month.AddMonths(1))
        {
            int first = month.DayNumber - any.First.DayNumber, middle = first + 14, last = Math.Min(364, month.AddMonths(1).DayNumber - any.First.DayNumber - 1);
            rows.Add(new RowView(
                month.ToString("MMMM yyyy", CultureInfo.InvariantCulture),
                [.. Cells(site.Soil, middle, value => ReportText.Temperature(value, units)), .. Cells(site.HeatSum, last, value => ReportText.HeatText(value, units))]));
        }

        return new TableView(
            $"{site.Site.Name}: soil in the middle of each month and heat at its end",
            ["Month", "Soil", "Median of earlier years", "Eight of ten of them", "Heat", "Median of earlier years", "Eight of ten of them"],
            rows,
            [$"Soil: mean of seven days, at {(units == ReadersUnits.UnitedStates ? "2 inches" : "5 cm")}, on the 15th. Heat: added up from the year's start to the month's last day. Eight of ten of the earlier years lay in the range."]);
    }

    private static string[] Cells(YearRange? range, int day, Func<double, string> text) => range is null
        ? [ReportText.None, ReportText.None, ReportText.None]
        : [text(range.Now[day]), text(range.Middle[day]), double.IsFinite(range.Low[day]) ? ReportText.Range(text(range.Low[day]), text(range.High[day])) : ReportText.None];

    private static byte[] Range(ReportCharts chart, string axis, YearRange range, Func<double, double> unit, int colour) => chart.YearInRange(
        axis, range.First, [.. range.Now.Select(unit)], [.. range.Low.Select(unit)], [.. range.Middle.Select(unit)], [.. range.High.Select(unit)], colour);

    private static string YearOf(YearRange range) => range.First.AddDays(364).Year == range.First.Year ? $"{range.First.Year}" : $"{range.First.Year} to {range.First.Year + 1}";

    private static string Earlier(YearRange range) => range.EarlierYears >= YearRange.FewestYears
        ? $"the range of the {range.EarlierYears} years before"
        : "no range, since too few years are known before";

    private static string Highest(YearRange range, ReadersUnits units)
    {
        int day = Enumerable.Range(0, range.Now.Count).Where(each => double.IsFinite(range.Now[each])).MaxBy(each => range.Now[each]);
        return $"{ReportText.Temperature(range.Now[day], units)} on {Commands.Output.Dates.ShortWithYear(range.First.AddDays(day))}";
    }
}
