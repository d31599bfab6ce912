namespace GddWatch.Agronomy.Chances;

/// <summary>Scores of probabilistic dates, in days.</summary>
public static class DateScores
{
    /// <summary>
    /// Continuous ranked probability score of an ensemble: (1/m) Σ|x − y| − (1/(2m²)) ΣΣ|x − x′| [days].
    /// <para>Fair: with 1/(2m(m−1)) instead, so that an ensemble is not scored worse for having few members. Source: Ferro 2013, Q. J. R. Meteorol. Soc., DOI 10.1002/qj.2270 (SEEN, science reference 5.3).</para>
    /// </summary>
    /// <param name="members">The dates [days].</param>
    /// <param name="truth">What happened [days].</param>
    /// <param name="fair">Whether the fair one.</param>
    /// <exception cref="ArgumentException">There is no member, or only one where the fair score is asked for.</exception>
    public static double Crps(IReadOnlyList<double> members, double truth, bool fair)
    {
        ArgumentNullException.ThrowIfNull(members);
        int m = members.Count;
        if (m < (fair ? 2 : 1)) throw new ArgumentException($"The score needs {(fair ? "two members" : "a member")} at least; it got {m}.", nameof(members));
        double[] sorted = [.. members.Order()];
        double away = 0, pairs = 0;
        for (int i = 0; i < m; i++)
        {
            away += Math.Abs(sorted[i] - truth);
            // Σ over all ordered pairs of |x − x′| is 2 Σ (2i − m + 1)·x(i) of the sorted members.
            pairs += 2 * (2.0 * i - m + 1) * sorted[i];
        }

        return away / m - pairs / (2.0 * m * (fair ? m - 1 : m));
    }

    /// <summary>
    /// Continuous ranked probability score of a normal distribution: σ[z(2Φ(z) − 1) + 2φ(z) − 1/√π], z = (y − μ)/σ [days].
    /// <para>Source: Gneiting &amp; Raftery 2007, J. Am. Stat. Assoc. 102:359-378 (MEMORY).</para>
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The deviation is not above 0.</exception>
    public static double CrpsNormal(double mean, double deviation, double truth)
    {
        if (!(deviation > 0)) throw new ArgumentOutOfRangeException(nameof(deviation), deviation, $"The deviation was {deviation}; allowed is above 0.");
        double z = (truth - mean) / deviation;
        double density = Math.Exp(-z * z / 2) / Math.Sqrt(2 * Math.PI);
        double below = MathNet.Numerics.Distributions.Normal.CDF(0, 1, z);
        return deviation * (z * (2 * below - 1) + 2 * density - 1 / Math.Sqrt(Math.PI));
    }

    /// <summary>
    /// Continuous ranked probability score of a distribution over days: Σ (F(k) − 1[k ≥ y])² over whole days [days]. What does not come by the season's end counts as the day after it, forecast and truth alike.
    /// <para>Fair: less what the number of futures alone adds. With A the mean distance of two dates of the distribution and W that of two dates of the same future, two dates of different futures lie
    /// (mA − W)/(m − 1) apart, and half of what that is more than A is taken off; without spreading it is the fair score of the futures' dates.
    /// Source: definition (science reference 5.3) and Ferro 2013 as above, applied to futures each of which has a spread of its own (CALC).</para>
    /// </summary>
    /// <param name="distribution">The distribution.</param>
    /// <param name="truth">The place on which it came; null for a season in which it did not.</param>
    /// <param name="fair">Whether the fair one.</param>
    public static double Crps(DateDistribution distribution, int? truth, bool fair)
    {
        ArgumentNullException.ThrowIfNull(distribution);
        int came = truth ?? distribution.LastPlace + 1;
        double score = 0, apart = 0;
        for (int place = 0; place <= distribution.LastPlace; place++)
        {
            double by = distribution.By(place);
            double miss = by - (place >= came ? 1 : 0);
            score += miss * miss;
            apart += 2 * by * (1 - by);
        }

        if (!fair || distribution.Futures < 2) return score;
        double m = distribution.Futures;
        double across = (m * apart - distribution.MeanGapWithinFutures) / (m - 1);
        return score - (across - apart) / 2;
    }
}
