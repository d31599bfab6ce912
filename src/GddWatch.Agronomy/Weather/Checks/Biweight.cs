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
        double[] scratch = values.ToArray();
        double median = Middle.Of(scratch);
        for (int i = 0; i < scratch.Length; i++) scratch[i] = Math.Abs(scratch[i] - median);
        double spread = Cutoff * Middle.Of(scratch);
        if (double.IsNaN(spread)) return (double.NaN, double.NaN);
        return spread == 0 ? Ordinary(values) : Weighted(values, median, spread);
    }

    private static (double Mean, double StandardDeviation) Weighted(ReadOnlySpan<double> values, double median, double spread)
    {
        double weights = 0;
        double weighted = 0;
        double squares = 0;
        double slope = 0;
        foreach (double value in values)
        {
            double distance = value - median;
            double u = distance / spread;
            double square = u * u;
            if (square >= 1) continue;
            double rest = 1 - square;
            double weight = rest * rest;
            weights += weight;
            weighted += distance * weight;
            squares += distance * distance * weight * weight;
            slope += rest * (1 - (5 * square));
        }

        return (median + (weighted / weights), Math.Sqrt(values.Length * squares) / Math.Abs(slope));
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
