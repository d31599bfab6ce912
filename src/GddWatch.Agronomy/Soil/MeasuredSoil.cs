using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Agronomy.Soil;

/// <summary>Soil temperature from a sensor at the site.</summary>
public static class MeasuredSoil
{
    /// <summary>How many missing days in a row are bridged with the last reading [days].</summary>
    public const int LongestHoleDays = 3;

    /// <summary>
    /// Gives the measured daily mean of the sensor depth (5 or 10 cm) that is nearer to the asked one. Short holes are bridged with the
    /// last reading, whose deviation is then 1 °C a day; longer ones stay NaN.
    /// </summary>
    /// <param name="series">The weather with measured soil temperature [°C].</param>
    /// <param name="depth">The depth asked for.</param>
    public static SoilTemperatureColumns At(DailySeries series, Depth depth)
    {
        ArgumentNullException.ThrowIfNull(series);
        bool deep = depth.Centimetres > 7.5 && series.Has(WeatherVariable.Soil10CmC);
        ReadOnlySpan<double> measured = series.Column(deep ? WeatherVariable.Soil10CmC : WeatherVariable.Soil5CmC);
        var mean = new double[series.Count];
        var deviation = new double[series.Count];
        int hole = LongestHoleDays;
        double last = double.NaN;
        for (int i = 0; i < mean.Length; i++)
        {
            bool known = measured.Length > 0 && !double.IsNaN(measured[i]);
            hole = known ? 0 : hole + 1;
            if (known) last = measured[i];
            mean[i] = hole <= LongestHoleDays ? last : double.NaN;
            deviation[i] = hole <= LongestHoleDays ? hole : double.NaN;
        }

        return new SoilTemperatureColumns(mean, deviation);
    }
}
