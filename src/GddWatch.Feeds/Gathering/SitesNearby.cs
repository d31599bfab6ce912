using GddWatch.Agronomy.Weather;
using GddWatch.Feeds.Archives;

namespace GddWatch.Feeds.Gathering;

/// <summary>Finds the sites about a site: by their latitudes first, so that a region of thousands does not measure millions of distances.</summary>
internal sealed class SitesNearby
{
    /// <summary>How many of their latest common days two sites are compared on to see whether they read the same source [days].</summary>
    private const int ComparedDays = 60;

    // A degree of latitude has 111 km on the sphere; what is more degrees away than this is farther than the limit.
    private const double LimitDegrees = RegionWeather.NeighbourKm / 111.0;

    private readonly GatheredSite[] sites;
    private readonly int[] byLatitude;
    private readonly double[] latitudes;

    public SitesNearby(GatheredSite[] sites)
    {
        this.sites = sites;
        byLatitude = [.. Enumerable.Range(0, sites.Length).Where(i => sites[i].Series is not null).OrderBy(i => sites[i].Site.Latitude)];
        latitudes = [.. byLatitude.Select(i => sites[i].Site.Latitude)];
    }

    /// <summary>The nearest other sites with weather within <see cref="RegionWeather.NeighbourKm"/> of a site, in the region's order, without those that read the same source.</summary>
    public IReadOnlyList<NearSite> Of(int place)
    {
        if (sites[place].Series is not { } series) return [];
        StationPosition here = new(sites[place].Site.Latitude, sites[place].Site.Longitude, null);
        List<NearSite> near = [];
        for (int i = FirstFrom(here.Latitude - LimitDegrees); i < latitudes.Length && latitudes[i] <= here.Latitude + LimitDegrees; i++)
        {
            GatheredSite other = sites[byLatitude[i]];
            if (byLatitude[i] == place) continue;
            double kilometres = here.KilometresTo(other.Site.Latitude, other.Site.Longitude);
            if (kilometres <= RegionWeather.NeighbourKm && !IsSameWeather(series, other.Series!)) near.Add(new NearSite(byLatitude[i], other, kilometres));
        }

        return [.. near.OrderBy(other => other.Kilometres).Take(RegionWeather.MostNeighbours).OrderBy(other => other.Place)];
    }

    private int FirstFrom(double latitude)
    {
        int found = Array.BinarySearch(latitudes, latitude);
        if (found < 0) return ~found;
        while (found > 0 && latitudes[found - 1] == latitude) found--;
        return found;
    }

    /// <summary>Whether two sites read the same source, so that one can say nothing about the other.</summary>
    private static bool IsSameWeather(DailySeries one, DailySeries other)
    {
        DateOnly last = one.LastDay < other.LastDay ? one.LastDay : other.LastDay;
        int common = 0;
        for (DateOnly day = last; common < ComparedDays && one.Holds(day) && other.Holds(day); day = day.AddDays(-1))
        {
            double lowC = one.MinimumAirC[one.IndexOf(day)] - other.MinimumAirC[other.IndexOf(day)];
            double highC = one.MaximumAirC[one.IndexOf(day)] - other.MaximumAirC[other.IndexOf(day)];
            if (double.IsNaN(lowC + highC)) continue;
            if (lowC != 0 || highC != 0) return false;
            common++;
        }

        return common > 0;
    }
}
