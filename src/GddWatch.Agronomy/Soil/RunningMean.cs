using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Soil;

/// <summary>The mean over the last days.</summary>
public static class RunningMean
{
    /// <summary>
    /// Gives for each day the mean of the values of the last <paramref name="days"/> days, that day included: m(d) = (1/n) Σ x(d−i), i = 0
    /// … n−1.
    /// <para>Valid for any number of days from 1.</para>
    /// <para>Missing input: NaN where one of those days is missing or lies before the first.</para>
    /// <para>Source: the arithmetic mean.</para>
    /// </summary>
    /// <param name="values">One value a day, NaN where missing.</param>
    /// <param name="days">Over how many days [days], 1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than one day.</exception>
    public static double[] Over(ReadOnlySpan<double> values, int days)
    {
        Demand.AtLeast(days, 1, "days of the running mean [days]");
        var means = new double[values.Length];
        for (int i = 0; i < values.Length; i++)
        {
            double sum = i + 1 < days ? double.NaN : 0;
            for (int back = 0; back < days && back <= i; back++) sum += values[i - back];
            means[i] = sum / days;
        }

        return means;
    }
}
