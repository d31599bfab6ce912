using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Weather;
using GddWatch.Commands.Output;
using GddWatch.Configuration;
using GddWatch.Feeds;
using GddWatch.Feeds.Archives;
using GddWatch.Feeds.Archives.Ghcn;
using GddWatch.Feeds.Faults;
using GddWatch.Feeds.Gathering;
using GddWatch.Feeds.Services;
using GddWatch.Storage;
using GddWatch.Watching;

namespace GddWatch.Commands;

/// <summary>What a command works with: the checked configuration and the weather of its sites.</summary>
internal sealed class Workplace(WatchConfiguration configuration, Terminal terminal)
{
    private const int MostFaultsShown = 12;

    public WatchConfiguration Configuration { get; } = configuration;

    public Region Region => Configuration.Region;

    /// <summary>Reads the configuration; where it is wrong, says all that is wrong and gives null.</summary>
    public static Workplace? Open(string configFolder, Terminal terminal)
    {
        ConfigurationReading reading = ConfigurationReader.Read(configFolder);
        if (reading.Configuration is { } configuration) return new Workplace(configuration, terminal);
        terminal.Error.WriteLine($"The configuration cannot be used: {(reading.Faults.Count == 1 ? "1 fault" : $"{reading.Faults.Count} faults")}.");
        foreach (Fault fault in reading.Faults) terminal.Error.WriteLine($"  {fault}");
        return null;
    }

    /// <summary>The region's time zone.</summary>
    public TimeZoneInfo Zone => TimeZoneInfo.FindSystemTimeZoneById(Region.TimeZone);

    /// <summary>Today in a site's own calendar.</summary>
    public DateOnly TodayAt(Site site) => TodayIn(site.TimeZone);

    /// <summary>Today in the region's calendar.</summary>
    public DateOnly Today => TodayIn(Region.TimeZone);

    /// <summary>Reads the weather of every site: files as they are now, services as they were kept. Who watches sees how far it is.</summary>
    public async Task<IReadOnlyList<SiteWeather>> GatherAsync(Keeping keeping, CancellationToken stop)
    {
        KeptWeather kept = await KeptWeathers.LoadAsync(keeping, stop);
        IReadOnlyList<GatheredSite> gathered = await ReadAsync(kept, stop);
        return await LongWork.ShowAsync(terminal, "Checking and filling weather", "steps", 2 * gathered.Count, done => Task.Run(() => RegionWeather.Of(gathered, ForecastsIn(kept), done), stop));
    }

    /// <summary>Reads the weather of every site as the feeds give it.</summary>
    /// <param name="kept">What was kept of the services, and which values were changed by their sources.</param>
    /// <param name="fetched">What asking the services just now brought to light.</param>
    /// <param name="stop">Stops the reading.</param>
    public async Task<IReadOnlyList<GatheredSite>> GatherAsync(KeptWeather kept, FetchReport fetched, CancellationToken stop)
    {
        using YearlyFiles yearly = FilesByYear();
        return await GatherAsync(yearly, kept, fetched, () => { }, stop);
    }

    private async Task<IReadOnlyList<GatheredSite>> GatherAsync(YearlyFiles yearly, KeptWeather kept, FetchReport fetched, Action siteRead, CancellationToken stop)
    {
        var gathered = new GatheredSite[Region.Sites.Count];
        await Parallel.ForAsync(0, gathered.Length, stop, async (i, token) =>
        {
            Site site = Region.Sites[i];
            IWeatherFeed[] feeds = [.. Configuration.Feeds[site.Id].Select(feed => Open(feed, yearly, kept, fetched))];
            gathered[i] = await SiteGathering.GatherAsync(site, feeds, TodayAt(site), token);
            siteRead();
        });
        return gathered;
    }

    /// <summary>The kept forecasts of a site's own feeds, on each day the preferred feed's last.</summary>
    public Func<Site, IReadOnlyList<Forecast>> ForecastsIn(KeptWeather kept) =>
        site => [.. Configuration.Feeds[site.Id].OfType<ServiceFeedDefinition>().Reverse().SelectMany(feed => kept.ForecastsOf(site.Id, feed.Name))];

    /// <summary>Reads what the feeds give and lets go of the files by year, which are large, before anything else is done.</summary>
    private async Task<IReadOnlyList<GatheredSite>> ReadAsync(KeptWeather kept, CancellationToken stop)
    {
        using YearlyFiles yearly = FilesByYear();
        await LongWork.ShowAsync(terminal, "Reading files by year", "MB", yearly.Megabytes, done => Task.Run(
            async () =>
            {
                await yearly.ReadAllAsync(done, stop);
                return yearly;
            },
            stop));
        return await LongWork.ShowAsync(terminal, "Reading weather", "sites", Region.Sites.Count, done => Task.Run(() => GatherAsync(yearly, kept, FetchReport.Nothing, done, stop), stop));
    }

    /// <summary>Files by year hold all stations: the sites share one reading of them.</summary>
    private YearlyFiles FilesByYear() =>
        new([.. Configuration.Feeds.Values.SelectMany(feeds => feeds).OfType<ArchiveFeedDefinition>().Where(feed => feed.Kind == ArchiveKind.GhcnDailyByYearCsv)], Configuration.BaseFolder, terminal.Clock);

    private IWeatherFeed Open(FeedDefinition feed, YearlyFiles yearly, KeptWeather kept, FetchReport fetched) => feed is ServiceFeedDefinition service
        ? new KeptServiceFeed(service, kept, fetched)
        : new RememberedFeed(FeedFactory.Create(feed, Configuration.BaseFolder, terminal.Clock, yearly), kept);

    /// <summary>Says on the error stream what was wrong with the weather: the worst of it in full, the rest by number.</summary>
    public void Report(IReadOnlyList<SiteWeather> gathered)
    {
        Fault[] serious = [.. gathered.SelectMany(weather => weather.Faults).Where(fault => fault.Severity != FaultSeverity.Remark).Distinct().OrderByDescending(fault => fault.Severity)];
        foreach (Fault fault in serious.Take(MostFaultsShown)) terminal.Error.WriteLine(fault);
        int hidden = serious.Length - MostFaultsShown;
        if (hidden > 0) terminal.Error.WriteLine($"{hidden} more faults in the weather files; `gddwatch check` lists all of them.");
    }

    private DateOnly TodayIn(string timeZone) =>
        DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(terminal.Clock.GetUtcNow(), TimeZoneInfo.FindSystemTimeZoneById(timeZone)).DateTime);
}
