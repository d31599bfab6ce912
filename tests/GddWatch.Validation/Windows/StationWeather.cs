using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Validation.Windows;

/// <summary>A station as the service would watch it, once with estimated and once with measured soil, by configuration alone.</summary>
/// <param name="Name">As its network writes it.</param>
/// <param name="IsHumid">Whether at least 600 mm of precipitation fall there in a year.</param>
/// <param name="Neighbourhood">A number that stations within <see cref="StationReader.NeighboursKm"/> of each other share: they have the same weather.</param>
/// <param name="Series">The weather as the feed gave it, holes unfilled, measured soil beside it.</param>
/// <param name="Estimated">The metrics with soil estimated from the air.</param>
/// <param name="Measured">The metrics with measured soil.</param>
internal sealed record StationWeather(string Name, bool IsHumid, int Neighbourhood, DailySeries Series, SiteMetrics Estimated, SiteMetrics Measured);
