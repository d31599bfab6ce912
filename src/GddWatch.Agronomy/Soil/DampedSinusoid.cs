using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Soil;

/// <summary>A temperature wave that goes down into soil, weaker and later with depth: a climatology and the shape of a day, not an
/// estimate of weather.</summary>
public static class DampedSinusoid
{
    private const double SecondsPerDay = 86_400;

    /// <summary>
    /// Gives the depth over which a wave falls to 1/e [cm]: d = √(D·P/π).
    /// <para>Valid for soil alike at all depths without freezing. Nothing may be missing (NaN is refused).</para>
    /// <para>Source: Hillel 1982; Marshall and Holmes 1988 (SEEN on a university's page).</para>
    /// </summary>
    /// <param name="diffusivity">Thermal diffusivity D [m²/s], 0 or more; measured under grass 0.32 to 0.39·10⁻⁶ (SEEN).</param>
    /// <param name="periodDays">Period P of the wave [days], 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is negative or not finite.</exception>
    public static double DampingDepthCm(double diffusivity, double periodDays)
    {
        Demand.NotNegative(diffusivity, "diffusivity [m²/s]");
        Demand.NotNegative(periodDays, "period [days]");
        return 100.0 * Math.Sqrt(diffusivity * periodDays * SecondsPerDay / Math.PI);
    }

    /// <summary>
    /// Gives the temperature at a depth and time [°C]: T = Tm + A·exp(−z/d)·sin(2π·(t − t0)/P − z/d − π/2), t0 the time of the lowest
    /// surface temperature.
    /// <para>Valid for steady waves in soil alike at all depths, without snow or freezing. Nothing may be missing (NaN is refused).</para>
    /// <para>Source: as <see cref="DampingDepthCm"/>.</para>
    /// </summary>
    /// <param name="meanC">Mean Tm [°C].</param>
    /// <param name="amplitudeC">Amplitude A at the surface [°C].</param>
    /// <param name="depthCm">Depth z [cm], 0 or more.</param>
    /// <param name="dampingDepthCm">Damping depth d [cm], more than 0.</param>
    /// <param name="sinceLowestDays">Time since the lowest surface temperature t − t0 [days].</param>
    /// <param name="periodDays">Period P [days], more than 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A depth is negative or an input not finite.</exception>
    public static double At(double meanC, double amplitudeC, double depthCm, double dampingDepthCm, double sinceLowestDays, double periodDays)
    {
        Demand.Finite(meanC, "mean [°C]");
        Demand.Finite(amplitudeC, "amplitude [°C]");
        Demand.Finite(sinceLowestDays, "time since the lowest temperature [days]");
        Demand.Within(dampingDepthCm, double.Epsilon, double.MaxValue, "damping depth [cm]");
        Demand.Within(periodDays, double.Epsilon, double.MaxValue, "period [days]");
        double relative = Demand.NotNegative(depthCm, "depth [cm]") / dampingDepthCm;
        return meanC + amplitudeC * Math.Exp(-relative) * Math.Sin(2.0 * Math.PI * sinceLowestDays / periodDays - relative - Math.PI / 2.0);
    }
}
