using MathNet.Numerics.Statistics;

namespace GddWatch.Agronomy.Windows;

/// <summary>What growth is usual over some years.</summary>
internal sealed class UsualGrowth(IReadOnlyList<double> peaks, double[] sums, int[] counts)
{
    /// <summary>The days of a growing year that are looked at [days].</summary>
    public const int DaysOfYear = 365;

    private double? peak;
    private double[]? curve;

    /// <summary>What is usual where no year is known.</summary>
    public static UsualGrowth Nothing => new([], new double[DaysOfYear], new int[DaysOfYear]);

    /// <summary>How many years are known.</summary>
    public int Years => peaks.Count;

    /// <summary>The median of their peaks; NaN where none is known.</summary>
    public double Peak => peak ??= peaks.Count == 0 ? double.NaN : peaks.QuantileCustom(0.5, QuantileDefinition.R8);

    /// <summary>The mean of each day of the year; NaN where it is not known.</summary>
    public double[] Curve => curve ??= [.. sums.Zip(counts, (sum, count) => count == 0 ? double.NaN : sum / count)];

    /// <summary>The same with one year more; itself where that one is not known.</summary>
    public UsualGrowth With(GrowingYear? year)
    {
        if (year is null) return this;
        double[] sumsThen = [.. sums];
        int[] countsThen = [.. counts];
        for (int offset = 0; offset < DaysOfYear; offset++)
        {
            if (double.IsNaN(year.Around[offset])) continue;
            sumsThen[offset] += year.Around[offset];
            countsThen[offset]++;
        }

        return new UsualGrowth([.. peaks, year.Peak], sumsThen, countsThen);
    }
}
