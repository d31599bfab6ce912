using System.CommandLine;
using System.Diagnostics.CodeAnalysis;
using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Windows;
using GddWatch.Commands.Output;
using GddWatch.Configuration.Settings;
using GddWatch.Feeds.Gathering;
using GddWatch.Notices.Channels;
using GddWatch.Notices.Composing;
using GddWatch.Storage;
using GddWatch.Watching;
using Spectre.Console;
using Region = GddWatch.Agronomy.Places.Region;

namespace GddWatch.Commands;

/// <summary>Lives through past days as the worker would have, day by day. Never sends: its mails go to a folder.</summary>
internal static class ReplayCommand
{
    public static Command Create(CommonOptions common, Terminal terminal)
    {
        Option<DateOnly?> from = DayOption.Named("--from", "First day; by default the first of the last full calendar year that the feeds hold.");
        Option<DateOnly?> until = DayOption.Named("--until", "Last day, included.");
        var command = new Command("replay", "Lives through past days as the worker would have, with later days hidden, and writes the mails into DATA/replay/mail. Sends nothing.") { from, until };
        command.SetAction((parsed, stop) => RunAsync(
            parsed.GetValue(common.Config)!, parsed.GetValue(common.Data)!, parsed.GetValue(from), parsed.GetValue(until), common.FormatOf(parsed), terminal, stop));
        return command;
    }

    private static async Task<int> RunAsync(
        string config, string data, DateOnly? from, DateOnly? until, OutputFormat format, Terminal terminal, CancellationToken stop)
    {
        if (Workplace.Open(config, terminal) is not { } place) return ExitCode.WrongUsageOrConfiguration;
        if (Keeping.Find(config, data, terminal) is not { } keeping) return ExitCode.WrongUsageOrConfiguration;
        IReadOnlyList<SiteWeather> weather = await place.GatherAsync(keeping, stop);
        place.Report(weather);
        foreach (SiteWeather dry in weather.Where(site => site.Series is null)) terminal.Error.WriteLine(dry.WhyMissing);
        if (weather.All(site => site.Series is null)) return ExitCode.Failed;
        if (!TryFindRange(weather, from, until, terminal, out DateSpan range)) return ExitCode.WrongUsageOrConfiguration;
        if (Mailing.ReplayComposer(place.Configuration, terminal) is not { } composer) return ExitCode.WrongUsageOrConfiguration;
        SettingsReading read = SettingsReader.Read(config);
        foreach (string fault in read.Faults) terminal.Error.WriteLine($"{Path.Combine(config, SettingsReader.File)} or the environment: {fault}");
        if (read.Settings is not { } settings) return ExitCode.WrongUsageOrConfiguration;
        string folder = DataFolder.Replay(data);
        IReadOnlyDictionary<string, SiteJournal> journals = await Journals.LoadAsync(keeping, stop);
        string scenario = ReplayScenario.Fingerprint(place.Configuration, weather, journals, settings.Bulletin, range);
        using WorkerLock? alone = WorkerLock.Take(folder, terminal.Clock, place.Zone, out string taken);
        if (alone is null)
        {
            terminal.Error.WriteLine(taken);
            return ExitCode.Failed;
        }

        await using Database database = await ReplayFolder.OpenAsync(folder, scenario, terminal, stop);
        await using var channel = new FolderChannel(DataFolder.Mail(folder));
        int already = (await new Outbox(database).CountAsync(stop)).Delivered;
        var replay = new Replay(place, settings.Bulletin, journals, database, new DeliveryPass(new Outbox(database), composer, channel, Replay.RulesOf(place.Region), place.Zone, () => 0), new CalendarFolder(DataFolder.Calendar(folder)));
        IReadOnlyList<string> troubles = await WithProgressAsync(terminal, range, progress => replay.RunAsync(weather, range, progress, stop));
        foreach (string trouble in troubles) terminal.Error.WriteLine(trouble);
        int delivered = (await new Outbox(database).CountAsync(stop)).Delivered;
        IReadOnlyList<Window> windows = replay.Summarise(weather, range);
        if (format == OutputFormat.People) ShowPeople(place.Region, windows, range, DataFolder.Mail(folder), delivered, delivered - already, terminal);
        else ShowPrograms(windows, format, terminal);
        return troubles.Count == 0 ? ExitCode.Done : ExitCode.Failed;
    }

    private static bool TryFindRange(IReadOnlyList<SiteWeather> weather, DateOnly? from, DateOnly? until, Terminal terminal, [NotNullWhen(true)] out DateSpan range)
    {
        range = default;
        DateSpan? lastYear = ReplayRange.LastFullYear(weather);
        DateOnly? first = from ?? (until is { } end ? new DateOnly(end.Year, 1, 1) : lastYear?.First);
        DateOnly? last = until ?? (from is { } begin ? new DateOnly(begin.Year, 12, 31) : lastYear?.Last);
        if (first is not { } firstDay || last is not { } lastDay)
        {
            terminal.Error.WriteLine("There is no full calendar year of weather to live through. Give --from and --until, or let a feed hold a year from 1 January to 31 December.");
            return false;
        }

        if (lastDay < firstDay)
        {
            terminal.Error.WriteLine($"--until {Dates.Iso(lastDay)} is before --from {Dates.Iso(firstDay)}. Accepted: a last day on or after the first.");
            return false;
        }

        range = new DateSpan(firstDay, lastDay);
        return true;
    }

    private static async Task<T> WithProgressAsync<T>(Terminal terminal, DateSpan range, Func<Action<DateOnly>, Task<T>> work)
    {
        if (!terminal.IsInteractive)
        {
            terminal.Error.WriteLine($"Living through {Wording.Day(range.First)} to {Wording.Day(range.Last)}, day by day ...");
            return await work(_ => { });
        }

        return await terminal.Progress().Progress().AutoClear(true).StartAsync(async context =>
        {
            ProgressTask task = context.AddTask($"Living through {range.First:yyyy-MM-dd} to {range.Last:yyyy-MM-dd}", maxValue: range.Days);
            return await work(day =>
            {
                task.Value = day.DayNumber - range.First.DayNumber + 1;
                task.Description = Dates.ShortWithYear(day);
            });
        });
    }

    private static void ShowPeople(Region region, IReadOnlyList<Window> windows, DateSpan range, string mailFolder, int delivered, int isNew, Terminal terminal)
    {
        Table table = new Table().Border(TableBorder.Simple).AddColumns("Site", "Treatment", "Season", "Opened", "Past best", "Closed");
        foreach (TableColumn column in table.Columns.Skip(2)) column.NoWrap();
        foreach (Window window in windows)
        {
            table.AddRow(
                Markup.Escape(window.Site.Name),
                Markup.Escape(window.Treatment.Name),
                $"{window.Season.Year}",
                window.FirstOpening is { } opening ? Dates.ShortWithYear(opening.Day) : NotOpened(window),
                window.PastBest is { } past ? Dates.ShortWithYear(past.Day) : "-",
                window.LastClosing is { } closing ? Dates.ShortWithYear(closing.Day) : "-");
        }

        terminal.Output.WriteLine($"{region.Name}: what opened where and when, from {Wording.Day(range.First)} to {Wording.Day(range.Last)}");
        terminal.Tables().Write(table);
        foreach (Window silent in windows.Where(window => window.FirstOpening is not null && !window.Treatment.IsToldAt(window.Site)))
        {
            terminal.Output.WriteLine($"No mail about {silent.Treatment.Name} at {silent.Site.Name}: {silent.Treatment.WhyNotTold(silent.Site)}.");
        }

        string mails = delivered == 1 ? "1 mail lies" : $"{delivered} mails lie";
        string news = isNew == delivered ? "all written now" : isNew == 0 ? "all of them there before, nothing new" : $"{isNew} written now";
        terminal.Output.WriteLine($"{mails} in {mailFolder} ({news}); open them with any mail program. Nothing was sent.");
        if (region.Remark.Length > 0) terminal.Output.WriteLine(region.Remark);
        terminal.Output.WriteLine("This is about timing. The product's label is the law; local codes, licences and watering rules come first.");
    }

    private static string NotOpened(Window window) => window.CouldNotBeJudged ? "- (not judged)" : $"- ({WindowStates.Word(window.State)})";

    private static void ShowPrograms(IReadOnlyList<Window> windows, OutputFormat format, Terminal terminal)
    {
        if (format == OutputFormat.Json)
        {
            ProgramText.WriteJson(terminal.Output, windows.Select(window => new
            {
                Site = window.Site.Id,
                Treatment = window.Treatment.Id,
                Season = window.Season.Year,
                Opens = window.FirstOpening is { } opening ? Dates.Iso(opening.Day) : null,
                Closes = window.LastClosing is { } closing ? Dates.Iso(closing.Day) : null,
            }));
            return;
        }

        ProgramText.WriteCsv(terminal.Output, ["site", "treatment", "season", "opens", "closes"], windows.Select(window => (IReadOnlyList<string?>)
        [
            window.Site.Id,
            window.Treatment.Id,
            window.Season.Year.ToString(),
            window.FirstOpening is { } opening ? Dates.Iso(opening.Day) : null,
            window.LastClosing is { } closing ? Dates.Iso(closing.Day) : null,
        ]));
    }
}
