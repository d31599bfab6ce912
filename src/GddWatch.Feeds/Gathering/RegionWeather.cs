using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Weather.Checks;
using GddWatch.Feeds.Archives;

namespace GddWatch.Feeds.Gathering;

/// <summary>Puts the sites of a region beside each other: each is checked and filled with the help of those near by.</summary>
public static class RegionWeather
{
    /// <summary>Beyond this distance another site says little of a day here [km]: pairs of stations farther apart filled no better than 2.7 °C.</summary>
    public const double NeighbourKm = 300;

    /// <summary>The weather of each site, checked and filled.</summary>
    /// <param name="gathered">What the feeds gave, a site each.</param>
    /// <param name="forecasts">The forecasts of a site as they were issued.</param>
    public static IReadOnlyList<SiteWeather> Of(IReadOnlyList<GatheredSite> gathered, Func<Site, IReadOnlyList<Forecast>> forecasts)
    {
        ArgumentNullException.ThrowIfNull(gathered);
        ArgumentNullException.ThrowIfNull(forecasts);
        return [.. gathered.Select(each => new SiteWeather(each.Site, HistoryOf(each, gathered, forecasts), each.Faults, each.Remarks))];
    }

    private static WeatherHistory? HistoryOf(GatheredSite site, IReadOnlyList<GatheredSite> all, Func<Site, IReadOnlyList<Forecast>> forecasts)
    {
        if (site.Series is null) return null;
        var here = new StationPosition(site.Site.Latitude, site.Site.Longitude, null);
        NeighbourSeries[] near =
        [
            .. all.Where(other => !ReferenceEquals(other, site) && other.Series is not null && !ReferenceEquals(other.Series, site.Series))
                .Select(other => new NeighbourSeries(other.Site.Name, here.KilometresTo(other.Site.Latitude, other.Site.Longitude), other.Series!))
                .Where(other => other.DistanceKm <= NeighbourKm),
        ];
        return WeatherHistory.Of(site.Series, near, forecasts(site.Site));
    }
}
