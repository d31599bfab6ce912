// What is asked of Open-Meteo, for a day of the site's calendar.
//
//   temperature_2m_max, temperature_2m_min    °C       maximum, minimum: required
//   temperature_2m_mean                       °C       mean
//   precipitation_sum                         mm       precipitation
//   shortwave_radiation_sum                   MJ/m²    solar radiation
//   relative_humidity_2m_mean                 %        humidity
//
// Not asked: wind, which it has at 10 m and a daily record has at 2 m; snow depth and soil temperature, which it has by the hour alone.
//
// Source: the documentation of /v1/forecast and /v1/archive, open-meteo.com (names, units, daily_units, null for missing, several coordinates, past_days up to 92,
// forecast_days up to 16, elevation, errors as { "error": true, "reason": … } with HTTP 400: SEEN; temperature_2m_mean and relative_humidity_2m_mean as daily
// variables of both: SEEN in requests of others, not in the pages read).
using GddWatch.Agronomy.Weather;

namespace GddWatch.Feeds.Services.OpenMeteo;

/// <summary>A daily variable of Open-Meteo.</summary>
internal sealed record OpenMeteoVariable(string Name, string Unit, WeatherVariable Variable)
{
    public static readonly IReadOnlyList<OpenMeteoVariable> All =
    [
        new("temperature_2m_max", "°C", WeatherVariable.MaximumAirC),
        new("temperature_2m_min", "°C", WeatherVariable.MinimumAirC),
        new("temperature_2m_mean", "°C", WeatherVariable.MeanAirC),
        new("precipitation_sum", "mm", WeatherVariable.PrecipitationMm),
        new("shortwave_radiation_sum", "MJ/m²", WeatherVariable.SolarRadiationMJ),
        new("relative_humidity_2m_mean", "%", WeatherVariable.RelativeHumidityPercent),
    ];

    /// <summary>The names as a request writes them.</summary>
    public static readonly string Names = string.Join(',', All.Select(each => each.Name));

    public bool IsExtreme => Variable is WeatherVariable.MaximumAirC or WeatherVariable.MinimumAirC;
}
