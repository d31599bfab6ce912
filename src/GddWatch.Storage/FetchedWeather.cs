using GddWatch.Agronomy.Weather;

namespace GddWatch.Storage;

/// <summary>What one feed gave for one site just now, ready to be kept.</summary>
/// <param name="Site">The site's id.</param>
/// <param name="Feed">The feed as people call it.</param>
/// <param name="Observed">The days it knows; null where there is none.</param>
/// <param name="Forecast">The days to come as it sees them now; null where there is none.</param>
/// <param name="Position">Where its values are of: latitude [°], longitude [°] and height [m]; null where it does not tell.</param>
public sealed record FetchedWeather(string Site, string Feed, DailySeries? Observed, Forecast? Forecast, (double Latitude, double Longitude, double? ElevationM)? Position);
