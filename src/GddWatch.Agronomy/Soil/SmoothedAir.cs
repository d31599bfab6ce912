using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Agronomy.Soil;

/// <summary>Soil temperature as exponentially smoothed air temperature: the simplest sound model, and the yardstick for the others.</summary>
public static class SmoothedAir
{
    /// <summary>Days at the start of a series, or after a hole, before the estimate is given [days].</summary>
    public const int WarmUpDays = 10;

    /// <summary>
    /// Gives the daily mean soil temperature: T(d) = T(d−1) + k·(Ta(d) − T(d−1)), and T(d) + b is returned.
    /// <para>k = 0.2 per day (science reference 2.7, CALC; mean delay 4 days). b = 1.7 °C is the measured amount by which 5 cm soil exceeds the smoothed air
    /// at humid stations of the US Climate Reference Network 2010-2023; deviation 2.6 °C.</para>
    /// <para>Missing days give NaN, and so do the first <see cref="WarmUpDays"/> days after them.</para>
    /// </summary>
    /// <param name="series">Air temperatures [°C].</param>
    /// <param name="depth">Depth; the model is for 5 to 10 cm and does not depend on it.</param>
    public static SoilTemperatureColumns Estimate(DailySeries series, Depth depth)
    {
        ArgumentNullException.ThrowIfNull(series);
        ReadOnlySpan<double> minimum = series.MinimumAirC;
        ReadOnlySpan<double> maximum = series.MaximumAirC;
        var mean = new double[series.Count];
        var deviation = new double[series.Count];
        Array.Fill(deviation, 2.6);
        double state = double.NaN;
        int known = 0;
        for (int i = 0; i < mean.Length; i++)
        {
            double air = (minimum[i] + maximum[i]) / 2.0;
            if (double.IsNaN(air))
            {
                known = 0;
                state = double.NaN;
            }
            else
            {
                known++;
                state = double.IsNaN(state) ? air : state + 0.2 * (air - state);
            }

            mean[i] = known > WarmUpDays ? state + 1.7 : double.NaN;
            if (double.IsNaN(mean[i])) deviation[i] = double.NaN;
        }

        return new SoilTemperatureColumns(mean, deviation);
    }
}
