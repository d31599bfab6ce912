using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Soil;

/// <summary>How the soil's temperature swings through a day about its mean.</summary>
public static class DiurnalWave
{
    /// <summary>Damping depth d of the daily wave [cm]; set by hand, see <see cref="DepartureC"/>.</summary>
    public const double DampingDepthCm = 10.5;

    /// <summary>When the surface is warmest [hours]; MEMORY, tested nowhere.</summary>
    public const double WarmestHour = 14;

    /// <summary>Amplitude at the surface for each degree of the day's range of the air; set by hand, see
    /// <see cref="DepartureC"/>.</summary>
    public const double AmplitudePerRange = 0.26;

    /// <summary>
    /// Gives by how much the soil at a time and depth exceeds its mean of the day [°C]: 0.26·(Tx − Tn)·exp(−z/d)·cos(2π·(h − 14)/24 − z/d).
    /// <para>Valid for unfrozen soil without snow; under either there is hardly a wave. It is a rough rule, seen at one place, one depth and in
    /// one half of the year only.</para>
    /// <para>Missing input: nothing may be missing.</para>
    /// <para>Source: the damped sinusoid (science reference 2.1, SEEN). The three constants are not fitted by a tool: d = 10.5 cm is that of
    /// moist clay there, chosen by hand; 0.26 is chosen by hand so that, with this d, the wave at 10 cm has the half range that was measured
    /// at Harvard Forest, 10 cm, April to October 2001 to 2015: 0.102 °C for each degree of range, with 0.49 °C left over
    /// (<see cref="ProbeConstants.ConversionVariance"/>). Hour 14 is MEMORY: no hourly soil temperature was at hand to test the
    /// phase.</para>
    /// </summary>
    /// <param name="airRangeC">The day's range of the air Tx − Tn [°C], 0 or more.</param>
    /// <param name="depthCm">Depth z [cm], 0 or more.</param>
    /// <param name="hour">Hour of the day h [hours], 0 to 24.</param>
    /// <exception cref="ArgumentOutOfRangeException">The range or depth is negative or not finite, or the hour outside the day.</exception>
    public static double DepartureC(double airRangeC, double depthCm, double hour)
    {
        Demand.NotNegative(airRangeC, "range of the air [°C]");
        Demand.Within(hour, 0, 24, "hour of the day [hours]");
        double sinceLowestDays = (hour - WarmestHour + 12.0) / 24.0;
        return DampedSinusoid.At(0.0, AmplitudePerRange * airRangeC, depthCm, DampingDepthCm, sinceLowestDays, 1.0);
    }
}
