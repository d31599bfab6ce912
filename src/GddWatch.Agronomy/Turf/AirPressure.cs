namespace GddWatch.Agronomy.Turf;

/// <summary>The weight of the air at a height.</summary>
public static class AirPressure
{
    /// <summary>
    /// Gives the usual pressure P = 101.3·((293 − 0.0065·z)/293)^5.26 [kPa].
    /// <para>Valid for heights of −400 to 9000 m.</para>
    /// <para>Source: Allen et al. 1998, FAO-56, equation 7 (MEMORY; example 2 SEEN through public test suites and CALC).</para>
    /// </summary>
    /// <param name="elevationM">Height above the sea [m].</param>
    public static double KPa(double elevationM) => 101.3 * Math.Pow((293.0 - 0.0065 * elevationM) / 293.0, 5.26);

    /// <summary>
    /// Gives the psychrometric constant γ = 0.000665·P [kPa/°C].
    /// <para>Valid as <see cref="KPa"/>.</para>
    /// <para>Source: Allen et al. 1998, FAO-56, equation 8 (MEMORY; example 2 SEEN through public test suites and CALC).</para>
    /// </summary>
    /// <param name="elevationM">Height above the sea [m].</param>
    public static double PsychrometricKPaPerC(double elevationM) => 0.000665 * KPa(elevationM);
}
