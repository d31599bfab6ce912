using System.Globalization;
using GddWatch.Agronomy.Places;
using GddWatch.Feeds.Services;

namespace GddWatch.Benchmarks.Fetch;

/// <summary>Invented sites on a grid of 0.3° and in four time zones, each with a station of its own.</summary>
internal static class FetchSites
{
    public const int Count = 1000;

    /// <summary>How many past days a daily fetch wants: those that the archives add late are among them.</summary>
    public const int PastDays = 14;

    private const string StationsBegin = "USW000";
    private const int SitesOfARow = 40;
    private const double SouthernLatitude = 33;
    private const double EasternLongitude = -78;
    private const double Step = 0.3;
    private static readonly string[] Zones = ["America/New_York", "America/Chicago", "America/Denver", "America/Los_Angeles"];

    public static Site At(int place) => new()
    {
        Id = $"site-{place.ToString(CultureInfo.InvariantCulture)}",
        Name = $"Site {place.ToString(CultureInfo.InvariantCulture)}",
        Latitude = Math.Round(SouthernLatitude + (place / SitesOfARow * Step), 4),
        Longitude = Math.Round(EasternLongitude - (place % SitesOfARow * Step), 4),
        ElevationM = 250,
        TimeZone = Zones[place % Zones.Length],
        Turf = [TurfType.CoolSeason],
    };

    /// <summary>Which site lies there.</summary>
    public static int PlaceOf(double latitude, double longitude) =>
        ((int)Math.Round((latitude - SouthernLatitude) / Step) * SitesOfARow) + (int)Math.Round((EasternLongitude - longitude) / Step);

    public static string StationAt(int place) => string.Create(CultureInfo.InvariantCulture, $"{StationsBegin}{10_000 + place}");

    /// <summary>The site whose station it is.</summary>
    public static Site OfStation(string station) => At(int.Parse(station.AsSpan(StationsBegin.Length), CultureInfo.InvariantCulture) - 10_000);

    /// <summary>Today in a zone's calendar.</summary>
    public static DateOnly Today(string zone, DateTimeOffset now) => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(now, TimeZoneInfo.FindSystemTimeZoneById(zone)).DateTime);

    /// <summary>What all sites want of a service in a daily fetch.</summary>
    public static ServiceRequest[] Requests(ServiceKind kind, Uri address, DateTimeOffset now) =>
    [
        .. Enumerable.Range(0, Count).Select(place =>
        {
            Site site = At(place);
            DateOnly today = Today(site.TimeZone, now);
            string? station = kind == ServiceKind.NoaaDailySummaries ? StationAt(place) : null;
            return new ServiceRequest(site, new ServiceFeedDefinition { Kind = kind, BaseAddress = address, Station = station }, today.AddDays(-PastDays), today);
        }),
    ];
}
