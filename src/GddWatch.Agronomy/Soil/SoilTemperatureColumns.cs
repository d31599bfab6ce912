using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Agronomy.Soil;

/// <summary>Soil temperature on each day of a series: estimate and its standard deviation, NaN where not known.</summary>
/// <param name="MeanC">Daily mean [°C].</param>
/// <param name="DeviationC">Standard deviation of the mean [°C]; zero where it was measured at that depth and day.</param>
public sealed record SoilTemperatureColumns(double[] MeanC, double[] DeviationC)
{
    /// <summary>Estimates by a model into new columns.</summary>
    /// <param name="model">The model.</param>
    /// <param name="series">The weather.</param>
    /// <param name="latitudeDegrees">Latitude [°], north positive.</param>
    /// <param name="depth">Depth, 2 to 20 cm.</param>
    /// <exception cref="ArgumentOutOfRangeException">The model refuses the weather, the latitude or the depth.</exception>
    public static SoilTemperatureColumns Estimate(ISoilTemperatureModel model, DailySeries series, double latitudeDegrees, Depth depth)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(series);
        var columns = new SoilTemperatureColumns(new double[series.Count], new double[series.Count]);
        model.Estimate(series, latitudeDegrees, depth, columns.MeanC, columns.DeviationC);
        return columns;
    }
}
