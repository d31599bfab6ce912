using GddWatch.Agronomy.Weather;

namespace GddWatch.Storage;

/// <summary>A value that its source has changed since it was first seen.</summary>
/// <param name="Site">The site's id.</param>
/// <param name="Feed">The feed.</param>
/// <param name="Day">The day.</param>
/// <param name="Variable">The variable.</param>
/// <param name="Before">The value that stood until now.</param>
/// <param name="After">The value that stands now.</param>
public sealed record KeptChange(string Site, string Feed, DateOnly Day, WeatherVariable Variable, double Before, double After);
