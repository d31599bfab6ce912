using System.Diagnostics;
using System.Globalization;
using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Weather;
using GddWatch.Commands;
using GddWatch.Configuration;
using GddWatch.Feeds.Gathering;
using GddWatch.Notices.Channels;
using GddWatch.Storage;
using GddWatch.Watching;

namespace GddWatch.Benchmarks.Pass;

/// <summary>
/// A day's pass of the service over many sites whose weather comes from an open service: what came in is kept, all windows are judged, what is due is written and queued, the windows and the calendars
/// are kept. Fetching is measured by itself (`fetch`) and no part of it. To reach with 10,000 sites: 10 s a day, however long the history is.
/// </summary>
internal static class PassCommand
{
    private const int DefaultSites = 10_000;
    private const int DefaultYears = 12;
    private const int DefaultDays = 5;

    /// <summary>How many past days a daily fetch brings again.</summary>
    private const int AgainDays = 14;

    private static readonly DateOnly Last = new(2026, 4, 20);

    /// <summary>Runs it: how many sites, how many years of history, and how many days.</summary>
    public static async Task<int> RunAsync(string[] args, CancellationToken stop)
    {
        int sites = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : DefaultSites;
        int years = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : DefaultYears;
        int days = args.Length > 2 ? int.Parse(args[2], CultureInfo.InvariantCulture) : DefaultDays;
        DirectoryInfo folder = Directory.CreateTempSubdirectory("gddwatch-pass-");
        try
        {
            return await MeasureAsync(folder.FullName, sites, years, days, stop);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static async Task<int> MeasureAsync(string folder, int sites, int years, int days, CancellationToken stop)
    {
        var region = new PassRegion(sites, new DateOnly(Last.Year - years, 1, 1), Last);
        region.WriteConfiguration(Path.Combine(folder, "config"), Path.Combine(Root.Find(), "config"));
        string[] ids = [.. region.Ids];
        DailySeries[] weather = [.. region.Weather()];
        DateOnly today = Last.AddDays(1 - days);
        var clock = new PassClock(today);
        var place = Workplace.Open(Path.Combine(folder, "config"), new Terminal(Console.Out, Console.Error, clock, isInteractive: false))!;
        await using Database database = await Database.OpenAsync(Path.Combine(folder, "gddwatch.db"), clock, stop);
        var store = new WeatherStore(database);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{sites:N0} sites, {years} years of history"));
        long start = Stopwatch.GetTimestamp();
        await KeepAsync(store, ids, weather, today.AddDays(-1), weather[0].Count, clock, stop);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"the history was kept in {Stopwatch.GetElapsedTime(start).TotalSeconds:N1} s; the database has {new FileInfo(Path.Combine(folder, "gddwatch.db")).Length / 1e6:N0} MB"));
        Console.WriteLine($"{"day",-12}{"s",8}{"CPU s",8}{"kept s",8}{"known s",9}{"judged s",9}{"mails",8}{"peak MB",9}");
        var daily = new DailyPass(place.Configuration, database, null, new DeliveryRules(place.Region, TimeSpan.FromDays(3)), new CalendarFolder(Path.Combine(folder, "calendar")));
        var checks = new RestingChecks();
        for (; today <= Last; today = today.AddDays(1))
        {
            clock.Day = today;
            TimeSpan busy = Environment.CpuUsage.TotalTime;
            start = Stopwatch.GetTimestamp();
            await KeepAsync(store, ids, weather, today.AddDays(-1), AgainDays, clock, stop);
            double kept = Stopwatch.GetElapsedTime(start).TotalSeconds;
            KeptWeather known = await store.LoadAsync(stop);
            IReadOnlyList<GatheredSite> gathered = await place.GatherAsync(known, FetchReport.Nothing, stop);
            IReadOnlyList<SiteWeather> all = RegionWeather.Of(gathered, place.ForecastsIn(known), resting: checks);
            double ready = Stopwatch.GetElapsedTime(start).TotalSeconds;
            PassReport report = await daily.RunAsync(all, new Dictionary<string, SiteJournal>(), today, place.TodayAt, clock.GetUtcNow(), stop);
            double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{today,-12:yyyy-MM-dd}{seconds,8:N1}{(Environment.CpuUsage.TotalTime - busy).TotalSeconds,8:N1}{kept,8:N1}{ready - kept,9:N1}{seconds - ready,9:N1}{report.MessagesQueued,8:N0}{Process.GetCurrentProcess().PeakWorkingSet64 / 1e6,9:N0}"));
            foreach (string failure in report.Failures.Take(3)) Console.WriteLine($"  {failure}");
        }

        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"held in the end: {GC.GetTotalMemory(forceFullCollection: true) / 1e6:N0} MB, the invented weather among it"));
        // What the service holds from day to day.
        GC.KeepAlive((store, checks, daily, weather));
        return 0;
    }

    private static Task<WeatherChanges> KeepAsync(WeatherStore store, string[] ids, DailySeries[] weather, DateOnly through, int days, TimeProvider clock, CancellationToken stop) => store.KeepAsync(
        [.. ids.Zip(weather, (id, series) => new FetchedWeather(id, PassRegion.Feed, Cut(series, through, days), null, null))], clock.GetUtcNow(), stop);

    private static DailySeries Cut(DailySeries series, DateOnly through, int days)
    {
        DailySeries until = series.Until(through)!;
        return days >= until.Count ? until : until.From(until.LastDay.AddDays(1 - days));
    }
}
