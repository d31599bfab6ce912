using System.Globalization;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;
using GddWatch.Feeds;
using GddWatch.Feeds.Archives;
using GddWatch.Feeds.Gathering;
using GddWatch.Validation.Weather;

namespace GddWatch.Validation.Windows;

/// <summary>Reads the stations of the US Climate Reference Network through the service's own feed.</summary>
internal static class StationReader
{
    /// <summary>Stations nearer to each other than this share their weather and are never put on two sides of a check [km]; set by hand.</summary>
    public const double NeighboursKm = 100;

    private const double EarthRadiusKm = 6371;

    /// <summary>Every station of stations.csv that has soil temperature at 5 cm.</summary>
    public static async Task<IReadOnlyList<StationWeather>> ReadAsync(string folder, CancellationToken stop)
    {
        string list = Path.Combine(folder, "stations.csv");
        if (!File.Exists(list)) throw new InvalidDataException($"{list} is not there. Give the weather folder that holds uscrn-daily.");
        List<(Site Site, bool IsHumid)> listed = [];
        DataLines.EachRow(list, cell => listed.Add((SiteOf(cell), cell("climate") == "humid")));
        List<StationWeather> stations = [];
        int[] neighbourhoods = Neighbourhoods([.. listed.Select(each => each.Site)]);
        for (int i = 0; i < listed.Count; i++)
        {
            (Site site, bool isHumid) = listed[i];
            var files = new ArchiveFeedDefinition(ArchiveKind.UscrnDaily, Path.Combine(folder, "*", $"CRND0103-*-{site.Id}.txt"));
            GatheredSite weather = await SiteGathering.GatherAsync(site, [FeedFactory.Create(files, Directory.GetCurrentDirectory(), TimeProvider.System)], DateOnly.MaxValue, stop);
            if (weather.Series is not { } series || !series.Has(WeatherVariable.Soil5CmC)) continue;
            stations.Add(new StationWeather(
                site.Id, isHumid, neighbourhoods[i], series, SiteMetrics.Of(series, site), SiteMetrics.Of(series, site with { SoilTemperature = SoilSource.Measured })));
        }

        return stations;
    }

    private static Site SiteOf(Func<string, string> cell) => new()
    {
        Id = cell("station"),
        Name = cell("station"),
        Latitude = double.Parse(cell("latitude"), CultureInfo.InvariantCulture),
        Longitude = double.Parse(cell("longitude"), CultureInfo.InvariantCulture),
        // Known for a few stations only; it moves the evapotranspiration a little, and by either soil alike.
        ElevationM = double.TryParse(cell("elevation_m"), NumberStyles.Float, CultureInfo.InvariantCulture, out double metres) ? metres : 0,
        TimeZone = "UTC",
        Turf = [TurfType.CoolSeason, TurfType.WarmSeason],
        Soil = SoilTexture.Loam,
        History = ["grubs"],
    };

    private static int[] Neighbourhoods(IReadOnlyList<Site> sites)
    {
        int[] numbers = [.. Enumerable.Range(0, sites.Count)];
        for (int i = 0; i < sites.Count; i++)
        {
            for (int j = 0; j < i; j++)
            {
                if (DistanceKm(sites[i], sites[j]) >= NeighboursKm) continue;
                (int from, int to) = (numbers[i], numbers[j]);
                for (int k = 0; k <= i; k++)
                {
                    if (numbers[k] == from) numbers[k] = to;
                }
            }
        }

        return numbers;
    }

    /// <summary>Great-circle distance by the haversine formula.</summary>
    private static double DistanceKm(Site one, Site other)
    {
        double latitude = double.DegreesToRadians(other.Latitude - one.Latitude);
        double longitude = double.DegreesToRadians(other.Longitude - one.Longitude);
        double half = Math.Pow(Math.Sin(latitude / 2), 2)
            + Math.Cos(double.DegreesToRadians(one.Latitude)) * Math.Cos(double.DegreesToRadians(other.Latitude)) * Math.Pow(Math.Sin(longitude / 2), 2);
        return 2 * EarthRadiusKm * Math.Asin(Math.Sqrt(half));
    }
}
