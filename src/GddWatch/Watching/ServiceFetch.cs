using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Weather;
using GddWatch.Configuration;
using GddWatch.Feeds;
using GddWatch.Feeds.Faults;
using GddWatch.Feeds.Services;
using GddWatch.Storage;

namespace GddWatch.Watching;

/// <summary>Asks the open weather services of all sites, once a pass, and keeps what they answer.</summary>
internal sealed class ServiceFetch(WatchConfiguration configuration, WeatherServices services, WeatherStore store)
{
    /// <summary>How far back days are asked for again [days]: sources complete and correct their last days.</summary>
    private const int AgainDays = 14;

    /// <summary>How many earlier years a service is asked for at first [years]: what is usual at a site takes ten of them.</summary>
    private const int FirstYears = 11;

    /// <summary>Fetches and keeps.</summary>
    /// <param name="todayAt">Today at a site.</param>
    /// <param name="at">The instant of the pass.</param>
    /// <param name="stop">Stops it.</param>
    public async Task<FetchReport> RunAsync(Func<Site, DateOnly> todayAt, DateTimeOffset at, CancellationToken stop)
    {
        KeptWeather known = await store.LoadAsync(stop);
        ServiceRequest[] requests =
        [
            .. configuration.Region.Sites.SelectMany(site => configuration.Feeds[site.Id].OfType<ServiceFeedDefinition>()
                .Select(feed => new ServiceRequest(site, feed, FirstWanted(known.Days.GetValueOrDefault((site.Id, feed.Name))?.LastDay, todayAt(site)), todayAt(site)))),
        ];
        if (requests.Length == 0) return FetchReport.Nothing;
        IReadOnlyList<ServiceReading> readings = await services.FetchAsync(requests, stop);
        WeatherChanges changes = await store.KeepAsync([.. readings.Select(Kept)], at, stop);
        return new FetchReport(
            readings.ToLookup(reading => (reading.Request.Site.Id, reading.Request.Feed.Name)),
            changes.Remarks.ToLookup(remark => (remark.Site, remark.Feed), remark => new FeedRemark($"{remark.Feed} {remark.Kind}", $"{remark.Feed}: {remark.Words}")),
            changes.Changed.Count);
    }

    private static DateOnly FirstWanted(DateOnly? lastKept, DateOnly today) =>
        lastKept is { } last ? last.AddDays(-AgainDays) : new DateOnly(today.Year - FirstYears, 1, 1);

    private static FetchedWeather Kept(ServiceReading reading) => new(
        reading.Request.Site.Id,
        reading.Request.Feed.Name,
        reading.Observed,
        reading.Forecast,
        reading.Position is { IsKnown: true } position ? (position.Latitude, position.Longitude, position.ElevationM) : null);
}
