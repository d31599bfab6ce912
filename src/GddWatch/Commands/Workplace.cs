using GddWatch.Agronomy.Places;
using GddWatch.Configuration;
using GddWatch.Feeds;
using GddWatch.Feeds.Faults;
using GddWatch.Feeds.Gathering;
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

    /// <summary>Reads the weather of every site.</summary>
    public async Task<IReadOnlyList<SiteWeather>> GatherAsync(CancellationToken stop)
    {
        var gathered = new List<SiteWeather>();
        foreach (Site site in Region.Sites) gathered.Add(await GatherAsync(site, stop));
        return gathered;
    }

    /// <summary>Reads the weather of one site.</summary>
    public async Task<SiteWeather> GatherAsync(Site site, CancellationToken stop)
    {
        IWeatherFeed[] feeds = [.. Configuration.Feeds[site.Id].Select(feed => FeedFactory.Create(feed, Configuration.BaseFolder, terminal.Clock))];
        return await SiteGathering.GatherAsync(site, feeds, TodayAt(site), stop);
    }

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
