using System.CommandLine;
using System.Globalization;
using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Soil;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Weather.Checks;
using GddWatch.Agronomy.Weather.Filling;
using GddWatch.Agronomy.Windows;
using GddWatch.Commands.Output;
using GddWatch.Configuration.Scalars;
using GddWatch.Feeds.Gathering;
using GddWatch.Storage;
using GddWatch.Watching;
using Spectre.Console;
using Region = GddWatch.Agronomy.Places.Region;

namespace GddWatch.Commands;

/// <summary>The derived daily table of a site.</summary>
internal static class DailyCommand
{
    public static Command Create(CommonOptions common, Terminal terminal)
    {
        Argument<string> site = new("SITE") { Description = "The site's id." };
        Option<DateOnly?> from = DayOption.Named("--from", "First row; the sums still start at their own dates.");
        Option<DateOnly?> until = DayOption.Named("--until", "Last row.");
        Option<string> depth = new("--depth") { Description = "Depth of the soil temperature.", HelpName = "DEPTH", DefaultValueFactory = _ => "5 cm" };
        Option<string[]> heat = new("--heat") { Description = $"A heat sum to add, repeatable: {HeatColumn.Accepted}.", HelpName = "TEXT", AllowMultipleArgumentsPerToken = false };
        var command = new Command("daily", "Shows the derived daily table of a site: temperatures, soil temperature with its deviation, growth potential, heat sums.") { site, from, until, depth, heat };
        command.SetAction((parsed, stop) =>
        {
            var asked = new Asked(
                parsed.GetValue(site)!, parsed.GetValue(from), parsed.GetValue(until), parsed.GetValue(depth)!, parsed.GetValue(heat) ?? []);
            return RunAsync(parsed.GetValue(common.Config)!, parsed.GetValue(common.Data)!, asked, common.FormatOf(parsed), terminal, stop);
        });
        return command;
    }

    private static async Task<int> RunAsync(string config, string data, Asked asked, OutputFormat format, Terminal terminal, CancellationToken stop)
    {
        if (Workplace.Open(config, terminal) is not { } place) return ExitCode.WrongUsageOrConfiguration;
        if (Keeping.Find(config, data, terminal) is not { } keeping) return ExitCode.WrongUsageOrConfiguration;
        if (place.Region.Sites.FirstOrDefault(each => each.Id == asked.SiteId) is not { } site)
        {
            terminal.Error.WriteLine($"There is no site \"{asked.SiteId}\". Accepted: {string.Join(", ", place.Region.Sites.Select(each => each.Id))}.");
            return ExitCode.WrongUsageOrConfiguration;
        }

        if (UnitText.Depth(asked.Depth).Value is not Depth depth)
        {
            terminal.Error.WriteLine($"--depth: \"{asked.Depth}\" is not a depth. Accepted: a number with its unit, such as \"5 cm\" or \"2 in\".");
            return ExitCode.WrongUsageOrConfiguration;
        }

        if (HeatColumns(asked.Heat, terminal) is not { } askedHeat) return ExitCode.WrongUsageOrConfiguration;
        SiteWeather weather = (await place.GatherAsync(keeping, stop)).First(each => each.Site == site);
        place.Report([weather]);
        if (weather.AsOf(DateOnly.MaxValue) is not { } known)
        {
            terminal.Error.WriteLine(weather.WhyMissing);
            return ExitCode.Failed;
        }

        SiteJournal journal = (await Journals.LoadAsync(keeping, stop)).GetValueOrDefault(site.Id, SiteJournal.Empty);
        SiteMetrics metrics = SiteJudging.MetricsOf(place.Configuration.Treatments, known, site, journal);
        HeatColumn[] heat = [.. place.Configuration.Treatments.Where(treatment => treatment.IsFor(site)).SelectMany(treatment => treatment.HeatSums()).Distinct().Select(HeatColumn.Of)];
        var table = new DailyTable(metrics, depth, heat, askedHeat);
        IEnumerable<int> rows = Enumerable.Range(0, metrics.Series.Count)
            .Where(index => (asked.From is not { } first || metrics.Series.DayAt(index) >= first) && (asked.Until is not { } last || metrics.Series.DayAt(index) <= last));
        switch (format)
        {
            case OutputFormat.Csv:
                ProgramText.WriteCsv(terminal.Output, table.Header, rows.Select(table.Row));
                break;
            case OutputFormat.Json:
                ProgramText.WriteJson(terminal.Output, rows.Select(table.JsonRow));
                break;
            default:
                ShowPeople(place.Region, site, metrics, depth, askedHeat, rows, terminal);
                ShowOddities(metrics, await KeptWeathers.LoadReplacedAsync(keeping, site.Id, stop), place.Region.Units, day => (asked.From is not { } first || day >= first) && (asked.Until is not { } last || day <= last), terminal);
                break;
        }

        return ExitCode.Done;
    }

    /// <summary>What is doubted, what was filled and by what means, and what a source has changed.</summary>
    private static void ShowOddities(SiteMetrics metrics, IReadOnlyList<ReplacedValue> replaced, ReadersUnits units, Func<DateOnly, bool> isShown, Terminal terminal)
    {
        foreach (Doubt doubt in metrics.Weather.Doubts.Where(doubt => isShown(doubt.Day))) terminal.Output.WriteLine($"Doubted and not used: {doubt.Why}");
        foreach (IGrouping<FillingRung, FilledValue> rung in metrics.Weather.Fillings.Where(filling => isShown(filling.Day)).GroupBy(filling => filling.Rung))
        {
            int days = rung.Select(filling => filling.Day).Distinct().Count();
            terminal.Output.WriteLine($"Filled by {FillingRungs.Words(rung.Key)}: {Wording.Days(days)}, give or take {Wording.TemperatureDifference(rung.Max(filling => filling.ErrorC), units)}.");
        }

        foreach (ReplacedValue value in replaced.Where(value => isShown(value.Day) && value.Variable is WeatherVariable.MinimumAirC or WeatherVariable.MaximumAirC))
        {
            string which = value.Variable == WeatherVariable.MinimumAirC ? "minimum" : "maximum";
            terminal.Output.WriteLine($"Changed by {value.Feed}: the {which} of {Wording.Day(value.Day)} was {Wording.Temperature(value.Value, units)} before.");
        }
    }

    /// <summary>The part of the table that people look at, in their own units; programs get all of it.</summary>
    private static void ShowPeople(Region region, Site site, SiteMetrics metrics, Depth depth, IReadOnlyList<HeatColumn> heat, IEnumerable<int> rows, Terminal terminal)
    {
        ReadersUnits units = region.Units;
        Table shown = new Table().Border(TableBorder.Simple).AddColumns("Day", "Minimum", "Maximum", "Weather", "Soil", "Give or take");
        foreach (HeatColumn column in heat) shown.AddColumn(Markup.Escape(column.Asked));
        foreach (TableColumn column in shown.Columns) column.NoWrap();
        foreach (int index in rows)
        {
            DateOnly day = metrics.Series.DayAt(index);
            SoilTemperatureColumns soil = metrics.Soil(depth);
            shown.AddRow([
                Dates.ShortWithYear(day),
                Temperature(metrics.Series.MinimumAirC[index]),
                Temperature(metrics.Series.MaximumAirC[index]),
                metrics.Series.QualityAt(index) is { } mark ? DailyTable.MarkWord(mark) : "missing",
                Temperature(soil.MeanC[index]),
                double.IsNaN(soil.DeviationC[index]) ? "" : Wording.TemperatureDifference(soil.DeviationC[index], units),
                .. heat.Select(column => metrics.HeatSumColumn(column.Definition)[index]).Select(sum => double.IsNaN(sum) ? "not known" : Wording.Heat(sum, units)),
            ]);
        }

        terminal.Output.WriteLine($"{site.Name}, soil at {Wording.Depth(depth, units)}, {(metrics.SoilIsMeasured ? "measured" : "estimated from the air")}. Growth potential and the heat sums of the treatments are in --format csv.");
        terminal.Tables().Write(shown);
        if (region.Remark.Length > 0) terminal.Output.WriteLine(region.Remark);

        string Temperature(double celsius) => double.IsNaN(celsius) ? "" : Wording.Temperature(celsius, units);
    }

    private static List<HeatColumn>? HeatColumns(IReadOnlyList<string> texts, Terminal terminal)
    {
        var columns = new List<HeatColumn>();
        bool wrong = false;
        foreach (string text in texts)
        {
            if (HeatColumn.Parse(text, each => UnitText.Temperature(each).Value as Temperature?, out string problem) is { } column)
            {
                columns.Add(column);
                continue;
            }

            terminal.Error.WriteLine($"--heat \"{text}\": {problem} Accepted: {HeatColumn.Accepted}.");
            wrong = true;
        }

        return wrong ? null : columns;
    }

    private sealed record Asked(string SiteId, DateOnly? From, DateOnly? Until, string Depth, IReadOnlyList<string> Heat);
}
