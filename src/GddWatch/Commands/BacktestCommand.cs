using System.CommandLine;
using GddWatch.Agronomy.Backtesting;
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

/// <summary>Past seasons: when each window would have opened and closed.</summary>
internal static class BacktestCommand
{
    private static readonly string[] Columns = ["site", "treatment", "season", "opens", "closes", "opensBecause", "closesBecause"];

    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var command = new Command("backtest", "Judges all past seasons by the same code as the live service, with later days hidden: opening and closing dates, and their spread.");
        command.SetAction((parsed, stop) => RunAsync(parsed.GetValue(common.Config)!, parsed.GetValue(common.Data)!, common.FormatOf(parsed), terminal, stop));
        return command;
    }

    private static async Task<int> RunAsync(string config, string data, OutputFormat format, Terminal terminal, CancellationToken stop)
    {
        if (Workplace.Open(config, terminal) is not { } place) return ExitCode.WrongUsageOrConfiguration;
        if (Keeping.Find(config, data, terminal) is not { } keeping) return ExitCode.WrongUsageOrConfiguration;
        IReadOnlyList<SiteWeather> gathered = await place.GatherAsync(keeping, stop);
        place.Report(gathered);
        var windows = new List<Window>();
        foreach (SiteWeather weather in gathered)
        {
            stop.ThrowIfCancellationRequested();
            if (weather.AsOf(DateOnly.MaxValue) is { } known) windows.AddRange(Backtest.Seasons(place.Configuration.Treatments, SiteMetrics.Of(known, weather.Site, SiteJournal.Empty, [])));
            else terminal.Error.WriteLine(weather.WhyMissing);
        }

        BacktestSummary[] summaries = [.. windows.GroupBy(window => (window.Site.Id, window.Treatment.Id)).Select(group => BacktestSummary.Of([.. group]))];
        switch (format)
        {
            case OutputFormat.Json:
                ProgramText.WriteJson(terminal.Output, new { Windows = windows.Select(ForPrograms), Summary = summaries.Select(ForPrograms) });
                break;
            case OutputFormat.Csv:
                ProgramText.WriteCsv(terminal.Output, Columns, windows.Select(Cells));
                break;
            default:
                ShowPeople(windows, summaries, place.Region, terminal);
                break;
        }

        return windows.Count > 0 ? ExitCode.Done : ExitCode.Failed;
    }

    private static object ForPrograms(Window window) => new
    {
        Site = window.Site.Id,
        Treatment = window.Treatment.Id,
        Season = window.Season.Year,
        Opens = window.FirstOpening is { } opening ? Dates.Iso(opening.Day) : null,
        Closes = window.LastClosing is { } closing ? Dates.Iso(closing.Day) : null,
        OpensBecause = (window.FirstOpening?.Because ?? window.Because).Sentence(ReadersUnits.Metric),
        ClosesBecause = window.LastClosing?.Because.Sentence(ReadersUnits.Metric),
        PastBest = window.PastBest is { } past ? Dates.Iso(past.Day) : null,
        MayHaveOpenedEarlier = window.MayHaveOpenedEarlier,
        OpensByFallback = window.FirstOpening?.Because.RestsOnFallback ?? false,
        ClosesByFallback = window.LastClosing?.Because.RestsOnFallback ?? false,
        CouldNotBeJudged = window.CouldNotBeJudged,
    };

    private static IReadOnlyList<string?> Cells(Window window) =>
    [
        window.Site.Id, window.Treatment.Id, window.Season.Year.ToString(),
        window.FirstOpening is { } opening ? Dates.Iso(opening.Day) : null,
        window.LastClosing is { } closing ? Dates.Iso(closing.Day) : null,
        (window.FirstOpening?.Because ?? window.Because).Sentence(ReadersUnits.Metric),
        window.LastClosing?.Because.Sentence(ReadersUnits.Metric),
    ];

    private static object ForPrograms(BacktestSummary summary) => new
    {
        summary.Site,
        summary.Treatment,
        summary.Seasons,
        summary.Opened,
        summary.OpenedUncertain,
        summary.NeverOpened,
        summary.Reopenings,
        MedianOpening = summary.MedianOpening?.ToString(),
        EarliestOpening = summary.EarliestOpening?.ToString(),
        LatestOpening = summary.LatestOpening?.ToString(),
        summary.OpeningSpreadDays,
        MedianClose = summary.MedianClose?.ToString(),
    };

    private static void ShowPeople(IReadOnlyList<Window> windows, IReadOnlyList<BacktestSummary> summaries, Region region, Terminal terminal)
    {
        IAnsiConsole console = terminal.Tables();
        Table overview = new Table().Border(TableBorder.Simple)
            .AddColumns("Site", "Treatment", "Seasons", "Opened", "Median", "Earliest", "Latest", "Spread", "Median close");
        foreach (TableColumn column in overview.Columns.Skip(2)) column.NoWrap();
        foreach (BacktestSummary summary in summaries)
        {
            Window any = windows.First(window => window.Site.Id == summary.Site && window.Treatment.Id == summary.Treatment);
            overview.AddRow(
                Markup.Escape(any.Site.Name),
                Markup.Escape(any.Treatment.Name),
                $"{summary.Seasons}",
                summary.OpenedUncertain > 0 ? $"{summary.Opened} (+{summary.OpenedUncertain} uncertain)" : $"{summary.Opened}",
                Day(summary.MedianOpening),
                Day(summary.EarliestOpening),
                Day(summary.LatestOpening),
                summary.OpeningSpreadDays is { } spread ? $"± {spread:0} days" : "-",
                Day(summary.MedianClose));
        }

        terminal.Output.WriteLine($"{region.Name}: past seasons, each day judged with later days hidden");
        console.Write(overview);
        foreach (IGrouping<string, Window> site in windows.GroupBy(window => window.Site.Name, StringComparer.Ordinal)) console.Write(SeasonTable(site));
        int reopenings = summaries.Sum(summary => summary.Reopenings);
        terminal.Output.WriteLine(reopenings == 0 ? "No window opened twice in a season." : $"Windows opened again within their season {reopenings} times.");
        terminal.Output.WriteLine("Each cell: opening to close. * too little was known just before, so it may have opened earlier. † a stated fallback stood in for what is usual here.");
        if (region.Remark.Length > 0) terminal.Output.WriteLine(region.Remark);
    }

    private static Table SeasonTable(IGrouping<string, Window> site)
    {
        string[] treatments = [.. site.Select(window => window.Treatment.Name).Distinct(StringComparer.Ordinal)];
        Table table = new Table().Border(TableBorder.Simple).Title(Markup.Escape(site.Key)).AddColumn("Season").AddColumns([.. treatments.Select(Markup.Escape)]);
        foreach (IGrouping<int, Window> season in site.GroupBy(window => window.Season.Year).OrderBy(season => season.Key))
        {
            table.AddRow([$"{season.Key}", .. treatments.Select(name => season.FirstOrDefault(window => window.Treatment.Name == name) is { } window ? Span(window) : "")]);
        }

        return table;
    }

    private static string Span(Window window)
    {
        if (window.FirstOpening is not { } opening) return window.State == WindowState.Unknown || window.CouldNotBeJudged ? "not judged" : "did not open";
        string close = window.LastClosing is { } closing ? $"{Brief(closing.Day)}{(closing.Because.RestsOnFallback ? "†" : "")}" : "?";
        return $"{Brief(opening.Day)}{(window.MayHaveOpenedEarlier ? "*" : "")}{(opening.Because.RestsOnFallback ? "†" : "")} to {close}";
    }

    private static string Day(AnnualDay? day) => day is { } known ? Brief(known.In(2024)) : "-";

    private static string Brief(DateOnly day) => day.ToString("d MMM", System.Globalization.CultureInfo.InvariantCulture);
}
