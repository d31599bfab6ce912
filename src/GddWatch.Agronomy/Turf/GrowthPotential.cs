using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Turf;

/// <summary>How well the warmth suits the growth of turf, from 0 to 1.</summary>
public static class GrowthPotential
{
    /// <summary>The best mean temperature for cool-season turf [°F]: SEEN.</summary>
    public const double CoolOptimumF = 68;

    /// <summary>The spread for cool-season turf [°F]: MEMORY.</summary>
    public const double CoolSpreadF = 10;

    /// <summary>The best mean temperature for warm-season turf [°F]: SEEN.</summary>
    public const double WarmOptimumF = 88;

    /// <summary>The spread for warm-season turf [°F]: MEMORY.</summary>
    public const double WarmSpreadF = 12;

    /// <summary>
    /// Gives the growth potential GP = exp(−½ ((T − Topt)/s)²); for warm-season turf it stays 1 above the optimum, as its authors later capped it (SEEN).
    /// <para>Valid for mean air temperatures over a day to a month.</para>
    /// <para>Source: Gelernter &amp; Stowell 2005, Improved overseeding programs 1. The role of weather, Golf Course Management 73(3):108-113; optima SEEN,
    /// spreads of 10 °F and 12 °F MEMORY (science reference 3.6).</para>
    /// </summary>
    /// <param name="turf">The family of grass.</param>
    /// <param name="meanAirC">Mean air temperature [°C]; NaN gives NaN.</param>
    /// <returns>The growth potential, 0 to 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is infinite.</exception>
    public static double Of(TurfType turf, double meanAirC)
    {
        if (double.IsNaN(meanAirC)) return double.NaN;
        double meanF = Temperature.FromCelsius(meanAirC).Fahrenheit;
        if (turf == TurfType.WarmSeason && meanF > WarmOptimumF) return 1;
        (double optimum, double spread) = turf == TurfType.CoolSeason ? (CoolOptimumF, CoolSpreadF) : (WarmOptimumF, WarmSpreadF);
        double z = (meanF - optimum) / spread;
        return Math.Exp(-0.5 * z * z);
    }
}
