using System.Diagnostics;

namespace GddWatch.Feeds.Services;

/// <summary>What is known of each service: its word, its address, and what its terms ask for.</summary>
public static class ServiceFacts
{
    /// <summary>The word by which configuration and faults call a service.</summary>
    public static string Word(ServiceKind kind) => kind switch
    {
        ServiceKind.NoaaDailySummaries => "noaa-daily-summaries",
        ServiceKind.UsWeatherService => "us-weather-service",
        ServiceKind.OpenMeteo => "open-meteo",
        _ => throw new UnreachableException($"No word for {kind}."),
    };

    /// <summary>Where a service is asked when nothing else is configured; the archive of Open-Meteo has a host of its own beside it.</summary>
    public static Uri DefaultAddress(ServiceKind kind) => kind switch
    {
        ServiceKind.NoaaDailySummaries => new Uri("https://www.ncei.noaa.gov/"),
        ServiceKind.UsWeatherService => new Uri("https://api.weather.gov/"),
        ServiceKind.OpenMeteo => new Uri("https://api.open-meteo.com/"),
        _ => throw new UnreachableException($"No address for {kind}."),
    };

    /// <summary>
    /// The sentence that names the source to those who read its values. Open-Meteo's licence asks for it (CC BY 4.0, with a link; SEEN in its terms); the two US
    /// services are in the public domain (SEEN) and are named as a matter of course.
    /// </summary>
    public static string Attribution(ServiceKind kind) => kind switch
    {
        ServiceKind.NoaaDailySummaries => "Daily station values: GHCN-Daily, NOAA National Centers for Environmental Information, public domain.",
        ServiceKind.UsWeatherService => "Forecast: US National Weather Service, public domain.",
        ServiceKind.OpenMeteo =>
            "Weather data by Open-Meteo.com (https://open-meteo.com/), CC BY 4.0 (https://creativecommons.org/licenses/by/4.0/), made into daily records; computed by weather models, not measured.",
        _ => throw new UnreachableException($"No attribution for {kind}."),
    };

    /// <summary>What an operator must know before using a service; null where there is nothing.</summary>
    public static string? Terms(ServiceKind kind) => kind switch
    {
        // Terms of the free host (SEEN): non-commercial use, fewer than 10,000 calls a day, 5,000 an hour and 600 a minute.
        ServiceKind.OpenMeteo =>
            "The free host of Open-Meteo is for non-commercial use, under 10,000 calls a day, 5,000 an hour and 600 a minute; a firm that sells lawn care needs the paid host. "
            + "Its days are computed by weather models, not measured.",
        _ => null,
    };
}
