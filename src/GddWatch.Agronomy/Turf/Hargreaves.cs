namespace GddWatch.Agronomy.Turf;

/// <summary>Reference evapotranspiration from temperatures alone.</summary>
public static class Hargreaves
{
    /// <summary>What turns radiation [MJ/m²] into the depth of water that it can evaporate [mm].</summary>
    private const double MmPerMJ = 0.408;

    /// <summary>
    /// Gives ET0 = 0.0023·(T + 17.8)·√(Tx − Tn)·0.408·Ra [mm/day], never below 0, with T the middle of the extremes. Ra is turned into mm first: without 0.408 the result would be 2.45 times too
    /// large.
    /// <para>Valid for whole days or longer; best over five days and more. NaN gives NaN.</para>
    /// <para>Error: in humid Mississippi mean error +0.28 mm and mean absolute error 0.68 mm a day against Penman-Monteith (Fisher and Pringle 2013, SEEN in summary).</para>
    /// <para>Source: Hargreaves and Samani 1985, as equation 52 of Allen et al. 1998, FAO-56 (MEMORY; example 20 CALC).</para>
    /// </summary>
    /// <param name="minimumC">Lowest air temperature [°C].</param>
    /// <param name="maximumC">Highest air temperature [°C].</param>
    /// <param name="aboveAirMJ">Radiation above the air Ra [MJ/m²].</param>
    public static double Mm(double minimumC, double maximumC, double aboveAirMJ)
    {
        double evaporated = 0.0023 * ((minimumC + maximumC) / 2.0 + 17.8) * Math.Sqrt(maximumC - minimumC) * MmPerMJ * aboveAirMJ;
        return evaporated < 0 ? 0 : evaporated;
    }
}
