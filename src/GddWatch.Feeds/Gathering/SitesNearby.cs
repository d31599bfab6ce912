using GddWatch.Agronomy.Weather;
using GddWatch.Feeds.Archives;

namespace GddWatch.Feeds.Gathering;

/// <summary>Finds the sites about a site: by their latitudes first, so that a region of thousands does not measure millions of distances.</summary>
internal sealed class SitesNearby
{
    /// <summary>How many of their latest common days two sites are compared on to see whether they read the same source [days].</summary>
    private const int ComparedDays = 60;

    // A degree of latitude has 111.2 km on the sphere: what is so many degrees away is farther than this times as many.
    private const double LeastKmOfDegree = 111.0;

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
        double latitude = sites[place].Site.Latitude;
        StationPosition here = new(latitude, sites[place].Site.Longitude, null);
        var nearest = new SortedSet<NearSite>(Comparer<NearSite>.Create((one, other) => (one.Kilometres, one.Place).CompareTo((other.Kilometres, other.Place))));
        double limitKm = RegionWeather.NeighbourKm;
        int up = FirstFrom(latitude), down = up - 1;
        // Outward by latitude, the nearer side first, until nothing farther north or south can be nearer than those found.
        while (true)
        {
            double above = up < latitudes.Length ? latitudes[up] - latitude : double.PositiveInfinity;
            double below = down >= 0 ? latitude - latitudes[down] : double.PositiveInfinity;
            if (Math.Min(above, below) * LeastKmOfDegree > limitKm) break;
            int other = byLatitude[above <= below ? up++ : down--];
            if (other == place) continue;
            double kilometres = here.KilometresTo(sites[other].Site.Latitude, sites[other].Site.Longitude);
            if (kilometres > limitKm || IsSameWeather(series, sites[other].Series!)) continue;
            nearest.Add(new NearSite(other, sites[other], kilometres));
            if (nearest.Count <= RegionWeather.MostNeighbours) continue;
            nearest.Remove(nearest.Max);
            limitKm = nearest.Max.Kilometres;
        }

        return [.. nearest.OrderBy(other => other.Place)];
    }

    /// <summary>The first place from a latitude on.</summary>
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
