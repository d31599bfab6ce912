using GddWatch.Agronomy.Weather;
using GddWatch.Commands;
using GddWatch.Feeds;
using GddWatch.Feeds.Gathering;
using GddWatch.Storage;

namespace GddWatch.Watching;

/// <summary>How weather comes into the service: the services are asked, the files are read, what is new or changed is kept, and all of it is checked and filled.</summary>
internal sealed class WeatherIntake(Workplace place, ServiceFetch fetch, WeatherStore store)
{
    /// <summary>How many of a file's last days are kept to notice changes [days]; the file itself holds the rest.</summary>
    private const int RememberedDays = 400;

    private readonly RestingChecks checks = new();

    /// <summary>The weather of every site as it is now.</summary>
    public async Task<IReadOnlyList<SiteWeather>> TakeAsync(DateTimeOffset at, CancellationToken stop)
    {
        FetchReport fetched = await fetch.RunAsync(place.TodayAt, at, stop);
        IReadOnlyList<GatheredSite> read = await place.GatherAsync(await store.LoadAsync(stop), fetched, stop);
        FetchedWeather[] files = [.. read.SelectMany(site => site.Readings.Where(each => !fetched.Readings.Contains((site.Site.Id, each.Feed))).Select(each => new FetchedWeather(site.Site.Id, each.Feed, Latest(each.Series), null, null)))];
        WeatherChanges changes = await store.KeepAsync(files, at, stop);
        // Read once more where a value was found changed, so that it has its mark.
        KeptWeather kept = await store.LoadAsync(stop);
        if (changes.Changed.Count > 0) read = await place.GatherAsync(kept, fetched, stop);
        ILookup<string, FeedRemark> remarks = changes.Remarks.ToLookup(each => each.Site, each => new FeedRemark($"{each.Feed} {each.Kind}", $"{each.Feed}: {each.Words}"), StringComparer.Ordinal);
        return RegionWeather.Of([.. read.Select(site => site with { Remarks = [.. site.Remarks, .. remarks[site.Site.Id]] })], place.ForecastsIn(kept), resting: checks);
    }

    private static DailySeries Latest(DailySeries series) => series.Count <= RememberedDays ? series : series.From(series.LastDay.AddDays(1 - RememberedDays));
}
