using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Agronomy.Soil;

/// <summary>Soil temperature from a sensor at the site.</summary>
public static class MeasuredSoil
{
    /// <summary>How many missing days in a row are bridged with the last reading [days].</summary>
    public const int LongestHoleDays = 3;

    private const double BetweenSensorsCm = 7.5;

    /// <summary>Variance for each cm between sensor and asked depth [°C²/cm].</summary>
    private const double VariancePerCm = 0.07;

    /// <summary>
    /// Gives the measured daily mean of the sensor (5 or 10 cm) that is nearer to the asked depth; of the only one where there is one.
    /// <para>Mean: the sensor's value of the day, or of the last known day up to 3 days before. Deviation: √(h² + 0.07·|z − zs|) [°C], h the days
    /// since that value, z the asked depth and zs the sensor's [cm]; so 0 where it was measured at that depth and day.</para>
    /// <para>Valid for 2 to 20 cm.</para>
    /// <para>Missing input: a hole of up to 3 days is bridged, longer ones stay NaN from their fourth day on, and so do days before the first
    /// value. Without any sensor all days are NaN.</para>
    /// <para>Source: our own rule. CALC: the daily means at 5 and 10 cm lie 0.64 °C apart (root mean square, 235 393 days) and those at 10 and
    /// 20 cm 0.73 °C (192 999 days) at the stations of <see cref="LayeredTurfSoilCoefficients"/>; the rule says 0.59 and 0.84 °C. 1 °C for a
    /// day's hole is set by hand.</para>
    /// </summary>
    /// <param name="series">The weather with measured soil temperature [°C].</param>
    /// <param name="depth">The depth asked for, 2 to 20 cm.</param>
    /// <exception cref="ArgumentOutOfRangeException">The depth lies outside 2 to 20 cm, or a measured temperature is infinite.</exception>
    public static SoilTemperatureColumns At(DailySeries series, Depth depth)
    {
        ArgumentNullException.ThrowIfNull(series);
        double askedCm = SoilDemand.DepthOfTurf(depth);
        bool deep = series.Has(WeatherVariable.Soil10CmC) && (askedCm > BetweenSensorsCm || !series.Has(WeatherVariable.Soil5CmC));
        ReadOnlySpan<double> measured = series.Column(deep ? WeatherVariable.Soil10CmC : WeatherVariable.Soil5CmC);
        double variance = VariancePerCm * Math.Abs(askedCm - (deep ? 10.0 : 5.0));
        var mean = new double[series.Count];
        var deviation = new double[series.Count];
        int hole = LongestHoleDays;
        double last = double.NaN;
        for (int i = 0; i < mean.Length; i++)
        {
            bool known = measured.Length > 0 && !double.IsNaN(measured[i]);
            hole = known ? 0 : hole + 1;
            if (known) last = SoilDemand.Measured(series.DayAt(i), measured[i]);
            mean[i] = hole <= LongestHoleDays ? last : double.NaN;
            deviation[i] = hole <= LongestHoleDays ? Math.Sqrt(hole * hole + variance) : double.NaN;
        }

        return new SoilTemperatureColumns(mean, deviation);
    }
}
