using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Soil;

/// <summary>What a person read from a soil thermometer.</summary>
/// <param name="Day">The day, in the site's own calendar.</param>
/// <param name="Time">The site's time of day; null where the value is the mean of the day.</param>
/// <param name="Depth">Depth of the thermometer's tip, 2 to 20 cm.</param>
/// <param name="Value">What it showed.</param>
public sealed record ProbeReading(DateOnly Day, TimeOnly? Time, Depth Depth, Temperature Value);
