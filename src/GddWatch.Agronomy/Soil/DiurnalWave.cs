using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Soil;

/// <summary>How the soil's temperature swings through a day about its mean.</summary>
public static class DiurnalWave
{
    /// <summary>Damping depth d of the daily wave [cm].</summary>
    public const double DampingDepthCm = 10.5;

    /// <summary>When the surface is warmest [hours].</summary>
    public const double WarmestHour = 14;

    /// <summary>Amplitude at the surface for each degree of the day's range of the air.</summary>
    public const double AmplitudePerRange = 0.26;

    /// <summary>
    /// Gives by how much the soil at a time and depth exceeds its mean of the day [°C]: 0.26·(Tx − Tn)·exp(−z/d)·cos(2π·(h − 14)/24 − z/d).
    /// <para>Valid for unfrozen soil without snow; under either there is hardly a wave.</para>
    /// <para>Source: the damped sinusoid (science reference 2.1, SEEN), d = 10.5 cm as for moist clay there, hour 14 MEMORY.</para>
    /// <para>Fitted: 0.26 from the half range at 10 cm at Harvard Forest 2001 to 2015, April to October, 0.102 for each degree of range
    /// (deviation of the rest 0.49 °C). The phase could not be tested.</para>
    /// </summary>
    /// <param name="airRangeC">The day's range of the air Tx − Tn [°C], 0 or more.</param>
    /// <param name="depthCm">Depth z [cm], 0 or more.</param>
    /// <param name="hour">Hour of the day h [hours], 0 to 24.</param>
    /// <exception cref="ArgumentOutOfRangeException">The range or depth is negative, or the hour outside the day.</exception>
    public static double DepartureC(double airRangeC, double depthCm, double hour)
    {
        Demand.NotNegative(airRangeC, "range of the air [°C]");
        Demand.Within(hour, 0, 24, "hour of the day [hours]");
        double sinceLowestDays = (hour - WarmestHour + 12.0) / 24.0;
        return DampedSinusoid.At(0.0, AmplitudePerRange * airRangeC, depthCm, DampingDepthCm, sinceLowestDays, 1.0);
    }
}
