using GddWatch.Agronomy.Weather;

namespace GddWatch.Validation.Weather;

/// <summary>A station with weather and with soil temperature that was measured beside it.</summary>
/// <param name="Name">As its network writes it.</param>
/// <param name="LatitudeDegrees">Latitude [°], north positive.</param>
/// <param name="IsHumid">Whether at least 600 mm of precipitation fall there in a year.</param>
/// <param name="Series">Air temperatures and precipitation, as a site would have them.</param>
/// <param name="AirOnly">The same without precipitation.</param>
/// <param name="MeasuredC">Measured daily mean soil temperature [°C] by depth [cm], one value a day of the series, NaN where missing.</param>
internal sealed record MeasuredStation(
    string Name, double LatitudeDegrees, bool IsHumid, DailySeries Series, DailySeries AirOnly, IReadOnlyDictionary<int, double[]> MeasuredC);
