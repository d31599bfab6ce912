using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Soil;

/// <summary>What is known of a site's bias, measured minus estimated: a first-order autoregressive bias followed by a scalar Kalman
/// filter.</summary>
/// <remarks>Valid for a bias that changes slowly against <see cref="ProbeConstants.MemoryDays"/>. Nothing may be missing: who has no reading
/// makes no step. Source: textbook (MEMORY); worked numbers of science reference 2.9 (CALC). The rule of doubt and the carrying over depth are
/// our own.</remarks>
/// <param name="MeanC">The bias [°C].</param>
/// <param name="Variance">Its variance [°C²].</param>
public readonly record struct SiteBias(double MeanC, double Variance)
{
    /// <summary>Before any reading: 0, with the variance of sites.</summary>
    /// <param name="constants">The constants.</param>
    public static SiteBias Unknown(ProbeConstants constants)
    {
        ArgumentNullException.ThrowIfNull(constants);
        return new SiteBias(0, constants.BiasDeviationC * constants.BiasDeviationC);
    }

    /// <summary>What is left of it later: b = φ·b, P = φ²·P + (1 − φ²)·σb², φ = exp(−Δt/τ).</summary>
    /// <param name="days">How much later Δt [days], 0 or more.</param>
    /// <param name="constants">σb and τ.</param>
    /// <exception cref="ArgumentOutOfRangeException">The time is negative or not finite.</exception>
    public SiteBias After(double days, ProbeConstants constants)
    {
        ArgumentNullException.ThrowIfNull(constants);
        return Carried(Math.Exp(-Demand.NotNegative(days, "time since [days]") / constants.MemoryDays), constants);
    }

    /// <summary>What it says of a bias that is correlated with it by ρ: b = ρ·b, P = ρ²·P + (1 − ρ²)·σb².</summary>
    /// <param name="correlation">ρ, 0 to 1.</param>
    /// <param name="constants">σb.</param>
    /// <exception cref="ArgumentOutOfRangeException">The correlation lies outside 0 to 1.</exception>
    public SiteBias Carried(double correlation, ProbeConstants constants)
    {
        ArgumentNullException.ThrowIfNull(constants);
        Demand.Within(correlation, 0, 1, "correlation");
        double prior = constants.BiasDeviationC * constants.BiasDeviationC;
        return new SiteBias(correlation * MeanC, correlation * correlation * Variance + (1.0 - correlation * correlation) * prior);
    }

    /// <summary>
    /// What is known with one more reading: v = (y − x) − ρ·b, S = ρ²·P + (1 − ρ²)·σb² + R, K = ρ·P/S, b = b + K·v, P = P − K·ρ·P.
    /// <para>Doubt: where z = |v|/√S passes the limit L, S becomes S·z²/L²: the reading pulls no more the farther off it is, yet a site
    /// that really is far off is found after some readings. What is doubted makes nothing more certain: P stays.</para>
    /// <para>A reading at another depth never takes the variance below what that depth can say, (1 − ρ²)·σb².</para>
    /// </summary>
    /// <param name="departureC">Reading minus uncorrected estimate at its depth, y − x [°C].</param>
    /// <param name="readingVariance">R [°C²].</param>
    /// <param name="correlation">ρ of the biases at both depths, 0 to 1.</param>
    /// <param name="constants">σb and L.</param>
    /// <param name="deviations">z.</param>
    /// <exception cref="ArgumentOutOfRangeException">The departure is not finite, the variance negative or not finite, or the correlation
    /// outside 0 to 1.</exception>
    public SiteBias With(double departureC, double readingVariance, double correlation, ProbeConstants constants, out double deviations)
    {
        ArgumentNullException.ThrowIfNull(constants);
        Demand.Finite(departureC, "departure of the reading [°C]");
        Demand.NotNegative(readingVariance, "variance of the reading [°C²]");
        SiteBias there = Carried(correlation, constants);
        double innovation = departureC - there.MeanC;
        double total = there.Variance + readingVariance;
        deviations = Math.Abs(innovation) / Math.Sqrt(total);
        double limit = constants.DoubtFromDeviations;
        bool doubted = deviations > limit;
        if (doubted) total *= deviations * deviations / (limit * limit);
        double gain = correlation * Variance / total;
        if (doubted) return this with { MeanC = MeanC + gain * innovation };
        double unsaid = (1.0 - correlation * correlation) * constants.BiasDeviationC * constants.BiasDeviationC;
        double variance = Math.Max((1.0 - gain * correlation) * Variance, Math.Min(Variance, unsaid));
        return new SiteBias(MeanC + gain * innovation, variance);
    }
}
