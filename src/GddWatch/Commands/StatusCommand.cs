using System.CommandLine;
using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Windows;
using GddWatch.Commands.Output;
using GddWatch.Feeds.Gathering;
using GddWatch.Watching;
using Spectre.Console;
using Region = GddWatch.Agronomy.Places.Region;

namespace GddWatch.Commands;

/// <summary>Where every window stands.</summary>
internal static class StatusCommand
{
    public static Command Create(CommonOptions common, Terminal terminal)
    {
        Option<DateOnly?> on = DayOption.Named("--on", "The day to look at, as 2026-04-12; today unless given. Days after it are hidden.");
        var command = new Command("status", "Shows where every window stands at every site, with the reason.") { on };
        command.SetAction((parsed, stop) => RunAsync(parsed.GetValue(common.Config)!, parsed.GetValue(common.Data)!, parsed.GetValue(on), common.FormatOf(parsed), terminal, stop));
        return command;
    }

    private static async Task<int> RunAsync(string config, string data, DateOnly? on, OutputFormat format, Terminal terminal, CancellationToken stop)
    {
        if (Workplace.Open(config, terminal) is not { } place) return ExitCode.WrongUsageOrConfiguration;
        if (Keeping.Find(config, data, terminal) is not { } keeping) return ExitCode.WrongUsageOrConfiguration;
        IReadOnlyList<SiteWeather> gathered = await place.GatherAsync(keeping, stop);
        place.Report(gathered);
        KeptRemarks kept = await KeptRemarks.LoadAsync(keeping, stop);
        IReadOnlyDictionary<string, SiteJournal> journals = await Journals.LoadAsync(keeping, stop);
        var rows = new List<StatusRow>();
        var notYet = new List<(string Site, BulletinLine Line)>();
        var ahead = new List<(string Site, string Remark)>();
        var writer = new BulletinWriter(place.Configuration.Treatments, place.Configuration.NotYet, place.Region);
        foreach (SiteWeather weather in gathered)
        {
            DateOnly day = on ?? place.TodayAt(weather.Site);
            SiteJournal journal = journals.GetValueOrDefault(weather.Site.Id, SiteJournal.Empty).Until(day);
            SiteJudging judging = SiteJudging.Judge(place.Configuration.Treatments, weather.Until(day), journal, day);
            Standing standing = judging.Standing;
            if (format == OutputFormat.People && judging.Metrics is { } metrics)
            {
                notYet.AddRange(writer.TooEarly(weather.Site, standing, metrics, judging.Ahead, _ => true).Select(each => (weather.Site.Name, new BulletinLine(each.What.Name, $"{each.What.Reason}{(each.When.Length > 0 ? $" {Wording.Capital(each.When)}." : "")}"))));
            }

            ahead.AddRange(judging.Ahead.Remarks.Select(remark => (weather.Site.Name, remark)));
            rows.AddRange(standing.Windows.Select(window => new StatusRow(window, judging.Ahead.Of(window), standing, journal, place.Region, kept.ConfigurationNotes)));
        }

        if (format != OutputFormat.People)
        {
            foreach (string words in kept.PausedInWords()) terminal.Error.WriteLine(words);
        }

        switch (format)
        {
            case OutputFormat.Json:
                ProgramText.WriteJson(terminal.Output, rows.Select(row => row.ForPrograms()));
                break;
            case OutputFormat.Csv:
                ProgramText.WriteCsv(terminal.Output, StatusRow.Columns, rows.Select(row => row.Cells()));
                break;
            default:
                ShowPeople(rows, notYet, ahead, kept, place.Region, on ?? place.Today, terminal);
                break;
        }

        return ExitCode.Done;
    }

    private static void ShowPeople(IReadOnlyList<StatusRow> rows, IReadOnlyList<(string Site, BulletinLine Line)> notYet, IReadOnlyList<(string Site, string Remark)> ahead, KeptRemarks kept, Region region, DateOnly day, Terminal terminal)
    {
        IAnsiConsole console = terminal.Tables();
        terminal.Output.WriteLine($"{region.Name}, {Wording.Day(day)}");
        foreach (IGrouping<string, StatusRow> site in rows.GroupBy(row => row.SiteName, StringComparer.Ordinal))
        {
            Table table = new Table().Border(TableBorder.Simple).AddColumns("Treatment", "State", "Since", "Why");
            table.Columns[1].NoWrap();
            table.Columns[2].NoWrap();
            foreach (StatusRow row in site.Where(row => !row.IsToCome)) table.AddRow(row.PeopleCells(region.Units).Select(Markup.Escape).ToArray());
            terminal.Output.WriteLine($"\n{site.Key}");
            console.Write(table);
            string[] toCome = [.. site.Where(row => row.IsToCome).Select(row => row.ToComeWords)];
            if (toCome.Length > 0) terminal.Output.WriteLine($"  Season still to come: {Wording.List(toCome)}.");
            foreach ((_, string remark) in ahead.Where(each => each.Site == site.Key)) terminal.Output.WriteLine($"  Days ahead: {remark}");
            foreach ((_, BulletinLine line) in notYet.Where(each => each.Site == site.Key)) terminal.Output.WriteLine($"  Not yet: {line.What}. {line.Text}");
        }

        foreach (string words in kept.PausedInWords().Concat(kept.UndeliveredInWords())) terminal.Output.WriteLine(words);
        if (region.Remark.Length > 0) terminal.Output.WriteLine(region.Remark);
        terminal.Output.WriteLine("This is about timing. The product's label is the law; local codes, licences and watering rules come first.");
    }
}
