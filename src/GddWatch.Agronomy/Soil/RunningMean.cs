using System.Numerics;
using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Soil;

/// <summary>The mean over the last days.</summary>
public static class RunningMean
{
    /// <summary>After how many days a sum is made afresh, counted from the first one [days].</summary>
    internal const int StepsBetweenFreshSums = 256;

    private const int AlwaysFreshDays = 7;

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
        if (days <= AlwaysFreshDays)
        {
            OverFew(values, days, means);
            return means;
        }

        double sum = 0;
        int missing = 0;
        for (int i = 0; i < values.Length; i++)
        {
            if (double.IsNaN(values[i])) missing++;
            else sum += values[i];
            if (i >= days)
            {
                if (double.IsNaN(values[i - days])) missing--;
                else sum -= values[i - days];
            }

            // Summed afresh now and then, so that the rounding of many steps does not add up.
            if (i % StepsBetweenFreshSums == 0) (sum, missing) = Fresh(values, i, days);
            means[i] = i + 1 < days || missing > 0 ? double.NaN : sum / days;
        }

        return means;
    }

    // Few days are always summed afresh, so that a mean that lies on a threshold stays on it: the sums of several days beside each other.
    private static void OverFew(ReadOnlySpan<double> values, int days, Span<double> means)
    {
        int i = Math.Min(days - 1, means.Length);
        means[..i].Fill(double.NaN);
        for (; i + Vector<double>.Count <= means.Length; i += Vector<double>.Count)
        {
            Vector<double> sums = Vector<double>.Zero;
            for (int back = days - 1; back >= 0; back--) sums += new Vector<double>(values[(i - back)..]);
            (sums / days).CopyTo(means[i..]);
        }

        for (; i < means.Length; i++)
        {
            double sum = 0;
            for (int back = days - 1; back >= 0; back--) sum += values[i - back];
            means[i] = sum / days;
        }
    }

    private static (double Sum, int Missing) Fresh(ReadOnlySpan<double> values, int last, int days)
    {
        double sum = 0;
        int missing = 0;
        for (int i = Math.Max(0, last - days + 1); i <= last; i++)
        {
            if (double.IsNaN(values[i])) missing++;
            else sum += values[i];
        }

        return (sum, missing);
    }
}
