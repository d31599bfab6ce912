using GddWatch.Agronomy.Places;

namespace GddWatch.Agronomy.Turf;

/// <summary>How turf uses water and how much of it a soil can hold for it.</summary>
public static class TurfWater
{
    /// <summary>
    /// How deep roots are taken to reach where nothing else is known [mm]. DESIGN: deeper than the 150 mm of turf that is watered daily, less than the 500 to 1000 mm that FAO-56 table 22 has for turf
    /// (MEMORY).
    /// </summary>
    public const double UsualRootDepthMm = 300;

    /// <summary>
    /// Gives the coefficient that turns reference evapotranspiration into that of the turf, Kc [-]: 0.95 for cool-season and 0.85 for warm-season turf.
    /// <para>Valid for turf in growth; dormant turf uses less.</para>
    /// <para>Source: Allen et al. 1998, FAO-56, table 12, middle of the season (MEMORY). Measured values scatter widely between places (Meyer et al. 1985: year 0.80 and 0.60, SEEN).</para>
    /// </summary>
    /// <param name="turf">The family of grass.</param>
    public static double Coefficient(TurfType turf) => turf == TurfType.CoolSeason ? 0.95 : 0.85;

    /// <summary>
    /// Gives the share of the available water that turf can use before it suffers, p = p5 + 0.04·(5 − ETc), kept within 0.1 and 0.8 [-], with p5 0.40 for cool-season and 0.50 for warm-season turf.
    /// <para>Valid for any ETc; NaN gives NaN.</para>
    /// <para>Source: Allen et al. 1998, FAO-56, table 22 and equation 84 note (MEMORY; adjustment CALC).</para>
    /// </summary>
    /// <param name="turf">The family of grass.</param>
    /// <param name="turfMm">Evapotranspiration of the turf ETc [mm/day].</param>
    public static double AllowedShare(TurfType turf, double turfMm) => Math.Clamp((turf == TurfType.CoolSeason ? 0.40 : 0.50) + 0.04 * (5.0 - turfMm), 0.1, 0.8);

    /// <summary>
    /// Gives the water that a soil holds for roots, field capacity less wilting point [m/m].
    /// <para>Valid for the texture classes named; organic matter, stones and compaction change it.</para>
    /// <para>Source: sand, sandy loam, loam and clay from science reference 3.8 (MEMORY); the classes between them are taken between (DESIGN).</para>
    /// </summary>
    /// <param name="soil">The texture.</param>
    /// <exception cref="ArgumentOutOfRangeException">The texture is none of the named ones.</exception>
    public static double AvailableShare(SoilTexture soil) => soil switch
    {
        SoilTexture.Sand => 0.06,
        SoilTexture.LoamySand => 0.09,
        SoilTexture.SandyLoam => 0.12,
        SoilTexture.Loam => 0.17,
        SoilTexture.SiltLoam => 0.19,
        SoilTexture.ClayLoam => 0.17,
        SoilTexture.Clay => 0.16,
        _ => throw new ArgumentOutOfRangeException(nameof(soil), soil, "This texture has no figure."),
    };

    /// <summary>
    /// Gives how fast water goes into bare level soil of a texture once it is wet [mm/h]; under dense turf it goes in somewhat faster, on a slope slower.
    /// <para>Valid as an order of size.</para>
    /// <para>Source: ranges in common use, sands above 20, loams 5 to 10, clays 1 to 5 mm/h (MEMORY, common practice).</para>
    /// </summary>
    /// <param name="soil">The texture.</param>
    /// <exception cref="ArgumentOutOfRangeException">The texture is none of the named ones.</exception>
    public static double InfiltrationMmPerHour(SoilTexture soil) => soil switch
    {
        SoilTexture.Sand => 30,
        SoilTexture.LoamySand => 20,
        SoilTexture.SandyLoam => 15,
        SoilTexture.Loam => 10,
        SoilTexture.SiltLoam => 8,
        SoilTexture.ClayLoam => 5,
        SoilTexture.Clay => 3,
        _ => throw new ArgumentOutOfRangeException(nameof(soil), soil, "This texture has no figure."),
    };
}
