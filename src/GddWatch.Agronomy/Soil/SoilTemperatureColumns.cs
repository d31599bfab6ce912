namespace GddWatch.Agronomy.Soil;

/// <summary>Soil temperature on each day of a series: estimate and its standard deviation, NaN where not known.</summary>
/// <param name="MeanC">Daily mean [°C].</param>
/// <param name="DeviationC">Standard deviation of the mean [°C]; zero where it was measured.</param>
public sealed record SoilTemperatureColumns(double[] MeanC, double[] DeviationC);
