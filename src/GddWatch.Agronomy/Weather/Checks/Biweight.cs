using System.Runtime.Intrinsics;
using MathNet.Numerics.Statistics;

namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>Mean and standard deviation that a few wild values do not move.</summary>
public static class Biweight
{
    private const double Cutoff = 7.5;

    /// <summary>
    /// Gives the biweight mean and standard deviation.
    /// <para>u = (x − M)/(7.5·MAD), |u| ≥ 1 set to 1, with M the median and MAD the median of |x − M|;
    /// mean = M + Σ(x − M)(1 − u²)²/Σ(1 − u²)²; standard deviation = √(n·Σ(x − M)²(1 − u²)⁴)/|Σ(1 − u²)(1 − 5u²)|.
    /// Where MAD = 0 the ordinary mean and standard deviation (n − 1).</para>
    /// <para>Valid for 2 or more finite values; a value that is not finite makes the result NaN.</para>
    /// <para>Source: Lanzante 1996, Int. J. Climatol. 16:1197-1226, appendix B, as used by Durre et al. 2010 (formula SEEN in an open implementation).</para>
    /// </summary>
    /// <param name="values">The values in any unit; their order does not matter.</param>
    /// <returns>Mean and standard deviation, both in the unit of the values.</returns>
    /// <exception cref="ArgumentException">Fewer than 2 values.</exception>
    public static (double Mean, double StandardDeviation) Of(ReadOnlySpan<double> values)
    {
        if (values.Length < 2) throw new ArgumentException($"A biweight mean needs 2 values or more; there were {values.Length}.", nameof(values));
        foreach (double value in values)
        {
            if (double.IsNaN(value)) return (double.NaN, double.NaN);
        }

        double[] inAnyOrder = values.ToArray();
        double median = ArrayStatistics.MedianInplace(inAnyOrder);
        for (int i = 0; i < inAnyOrder.Length; i++) inAnyOrder[i] = Math.Abs(values[i] - median);
        double spread = Cutoff * ArrayStatistics.MedianInplace(inAnyOrder);
        return spread == 0 ? Ordinary(values) : Weighted(values, median, spread);
    }

    private static (double Mean, double StandardDeviation) Weighted(ReadOnlySpan<double> values, double median, double spread)
    {
        Vector256<double> weights = Vector256<double>.Zero, weighted = Vector256<double>.Zero, squares = Vector256<double>.Zero, slopes = Vector256<double>.Zero;
        var ones = Vector256.Create(1.0);
        int i = 0;
        for (; i <= values.Length - Vector256<double>.Count; i += Vector256<double>.Count)
        {
            Vector256<double> distance = Vector256.Create(values[i..]) - Vector256.Create(median);
            Vector256<double> u = distance / Vector256.Create(spread);
            Vector256<double> square = u * u;
            // Where u is 1 or more nothing is left, and the value counts for nothing.
            Vector256<double> rest = Vector256.Max(ones - square, Vector256<double>.Zero);
            Vector256<double> weight = rest * rest;
            Vector256<double> part = distance * weight;
            weights += weight;
            weighted += part;
            squares += part * part;
            slopes += rest * (ones - (square * 5.0));
        }

        (double sumOfWeights, double sumWeighted, double sumOfSquares, double slope) = (Vector256.Sum(weights), Vector256.Sum(weighted), Vector256.Sum(squares), Vector256.Sum(slopes));
        for (; i < values.Length; i++)
        {
            double distance = values[i] - median;
            double u = distance / spread;
            double rest = Math.Max(1 - (u * u), 0);
            double weight = rest * rest;
            sumOfWeights += weight;
            sumWeighted += distance * weight;
            sumOfSquares += distance * weight * distance * weight;
            slope += rest * (1 - (5 * u * u));
        }

        return (median + (sumWeighted / sumOfWeights), Math.Sqrt(values.Length * sumOfSquares) / Math.Abs(slope));
    }

    private static (double Mean, double StandardDeviation) Ordinary(ReadOnlySpan<double> values)
    {
        double sum = 0;
        foreach (double value in values) sum += value;
        double mean = sum / values.Length;
        double squares = 0;
        foreach (double value in values) squares += (value - mean) * (value - mean);
        return (mean, Math.Sqrt(squares / (values.Length - 1)));
    }
}
