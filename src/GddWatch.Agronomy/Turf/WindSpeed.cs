namespace GddWatch.Agronomy.Turf;

/// <summary>Wind at the height that evapotranspiration is reckoned for.</summary>
public static class WindSpeed
{
    /// <summary>What stands in where the wind is not known [m/s]. Source: Allen et al. 1998, FAO-56, chapter 3 (MEMORY; used in example 20).</summary>
    public const double UsualMPerS = 2.0;

    /// <summary>
    /// Gives the wind at 2 m over short grass: u2 = uz·4.87/ln(67.8·z − 5.42) [m/s].
    /// <para>Valid for heights above 0.2 m; NaN gives NaN.</para>
    /// <para>Source: Allen et al. 1998, FAO-56, equation 47 (MEMORY; example 14 SEEN through public test suites and CALC).</para>
    /// </summary>
    /// <param name="windMPerS">Wind at the height of measurement [m/s].</param>
    /// <param name="heightM">That height [m].</param>
    public static double At2MMPerS(double windMPerS, double heightM) => windMPerS * 4.87 / Math.Log(67.8 * heightM - 5.42);
}
