using System.CommandLine;
using System.Text;
using GddWatch.Agronomy.Backtesting;
using GddWatch.Agronomy.Backtesting.Rivals;
using GddWatch.Agronomy.Backtesting.Scores;
using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Windows;
using GddWatch.Commands.Backtesting;
using GddWatch.Commands.Output;
using GddWatch.Feeds.Gathering;
using GddWatch.Reports;

namespace GddWatch.Commands;

/// <summary>Past seasons: when each window would have opened and closed, and how well that was.</summary>
internal static class BacktestCommand
{
    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var options = new BacktestOptions();
        var command = new Command(
            "backtest",
            "Judges all past seasons by the same code as the live service, with later days hidden: opening and closing dates, their spread, the calendar and a rule of thumb beside them, scores against what was seen, and what other thresholds would change.");
        foreach (Option option in options.All) command.Add(option);
        command.SetAction((parsed, stop) => RunAsync(parsed, options, common, terminal, stop));
        return command;
    }

    private static async Task<int> RunAsync(ParseResult parsed, BacktestOptions options, CommonOptions common, Terminal terminal, CancellationToken stop)
    {
        if (Workplace.Open(parsed.GetValue(common.Config)!, terminal) is not { } place) return ExitCode.WrongUsageOrConfiguration;
        if (BacktestAsked.Read(parsed, options, place, terminal) is not { } asked) return ExitCode.WrongUsageOrConfiguration;
        if (Keeping.Find(parsed.GetValue(common.Config)!, parsed.GetValue(common.Data)!, terminal) is not { } keeping) return ExitCode.WrongUsageOrConfiguration;
        if (await Observations.ReadAsync(asked.Observed, keeping, place, terminal, stop) is not { } observed) return ExitCode.WrongUsageOrConfiguration;
        if (asked.Observed is not null) Observations.TellUnused(observed, place.Configuration.Treatments, terminal);
        if (asked.IsOfWindowsAlone(common.FormatOf(parsed))) return await WriteWindowsAsync(place, keeping, asked, observed, terminal, stop);
        IReadOnlyList<SiteBacktest> sites = await JudgeAsync(place, keeping, asked, asked.WithRivals(common.FormatOf(parsed)), site => site.WithReasonsMade(), terminal, stop);
        var past = new PastSeasons(place.Region, sites, observed, asked.WithinDays);
        Tell(observed, [.. past.Windows.Select(JudgedSeason.Of)], terminal);
        switch (common.FormatOf(parsed))
        {
            case OutputFormat.Json:
                WriteJson(past, terminal);
                break;
            case OutputFormat.Csv:
                BacktestTables.Of(asked.Table, past).WriteCsv(terminal.Output);
                break;
            default:
                BacktestForPeople.Show(past, terminal);
                break;
        }

        if (past.Windows.Count > 0 && asked.Report is { } file) await ReportAsync(past, file, terminal, stop);
        return past.Windows.Count > 0 ? ExitCode.Done : ExitCode.Failed;
    }

    // The rows of each site are put into words where it is judged, and its windows let go: a thousand sites have hundreds of thousands.
    private static async Task<int> WriteWindowsAsync(Workplace place, Keeping keeping, BacktestAsked asked, ObservedDates observed, Terminal terminal, CancellationToken stop)
    {
        IReadOnlyList<(StringBuilder Rows, JudgedSeason[] Seasons)> sites = await JudgeAsync(
            place, keeping, asked, withRivals: false, site => (BacktestTables.Windows(site.Windows).RowsInCsv(), (JudgedSeason[])[.. site.Windows.Select(JudgedSeason.Of)]), terminal, stop);
        JudgedSeason[] seasons = [.. sites.SelectMany(site => site.Seasons)];
        Tell(observed, seasons, terminal);
        BacktestTables.Windows([]).WriteCsv(terminal.Output);
        foreach ((StringBuilder rows, _) in sites) terminal.Output.Write(rows);
        return seasons.Length > 0 ? ExitCode.Done : ExitCode.Failed;
    }

    private static void Tell(ObservedDates observed, JudgedSeason[] seasons, Terminal terminal)
    {
        if (seasons.Length > 0) Observations.TellOutside(observed, seasons, terminal);
        Observations.TellSeveral(observed, seasons, terminal);
    }

    private static async Task<IReadOnlyList<T>> JudgeAsync<T>(
        Workplace place, Keeping keeping, BacktestAsked asked, bool withRivals, Func<SiteBacktest, T> take, Terminal terminal, CancellationToken stop)
    {
        SiteWeather[] gathered = [.. (await place.GatherAsync(keeping, stop)).Where(weather => asked.Sites.Contains(weather.Site))];
        place.Report(gathered);
        return await LongWork.ShowAsync(terminal, "Judging past seasons", "sites", gathered.Length, done => Task.Run(
            () =>
            {
                var judged = new (bool IsKnown, T Taken)[gathered.Length];
                Parallel.For(0, gathered.Length, new ParallelOptions { CancellationToken = stop }, i =>
                {
                    if (gathered[i].AsOf(DateOnly.MaxValue) is { } known) judged[i] = (true, take(Judge(SiteMetrics.Of(known, gathered[i].Site, SiteJournal.Empty, []), asked, withRivals)));
                    done();
                });
                for (int i = 0; i < judged.Length; i++)
                {
                    if (!judged[i].IsKnown) terminal.Error.WriteLine(gathered[i].WhyMissing);
                }

                return (IReadOnlyList<T>)[.. judged.Where(site => site.IsKnown).Select(site => site.Taken)];
            },
            stop));
    }

    private static SiteBacktest Judge(SiteMetrics metrics, BacktestAsked asked, bool withRivals)
    {
        Window[] windows = [.. Backtest.Seasons(asked.Treatments, metrics).Where(window => asked.Holds(window.Season))];
        SiteBacktest site = SiteBacktest.Of(metrics, windows, asked.Variants, withRivals, asked.WithYear);
        return site with { Variants = [.. site.Variants.Select(variant => variant with { Seasons = [.. variant.Seasons.Where(season => asked.Holds(season.Window.Season))] })] };
    }

    private static void WriteJson(PastSeasons past, Terminal terminal)
    {
        var tables = new OrderedDictionary<string, object>();
        foreach (string name in BacktestTables.Names) tables.Add(name, BacktestTables.Of(name, past).AsObjects());
        ProgramText.WriteJson(terminal.Output, tables);
    }

    private static async Task ReportAsync(PastSeasons past, string file, Terminal terminal, CancellationToken stop)
    {
        int pictures = SeasonReport.CountPictures(past);
        string page = await LongWork.ShowAsync(terminal, "Drawing the report", "charts", pictures, done => Task.Run(() => SeasonReport.Page(past, done, stop), stop));
        await WholeFile.WriteAsync(file, page, stop);
        terminal.Error.WriteLine($"The report is in {file}; it is one file, and any browser shows and prints it.");
    }
}
