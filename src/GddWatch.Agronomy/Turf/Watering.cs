using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Turf;

/// <summary>A deep watering that refills the root zone.</summary>
/// <param name="NetMm">What the roots are to receive [mm].</param>
/// <param name="GrossMm">What the sprinklers are to give, losses included [mm].</param>
/// <param name="Cycles">In how many parts, with pauses between them, so that it does not run off.</param>
public sealed record Watering(double NetMm, double GrossMm, int Cycles)
{
    /// <summary>How much of the water given reaches the roots where nothing else is known [-]. Sprinklers on lawns reach some 0.7 to 0.85 (MEMORY, common practice).</summary>
    public const double UsualEfficiency = 0.75;

    /// <summary>How fast lawn sprinklers usually give water [mm/h]. Spray heads give some 25 to 45, rotors 10 to 15 (MEMORY, common practice).</summary>
    public const double UsualRateMmPerHour = 25;

    /// <summary>How much may stand between the blades before it runs off [mm]. DESIGN: dense turf on level ground holds a few millimetres.</summary>
    private const double StandsAtMostMm = 5;

    /// <summary>
    /// Gives the watering that is due: none while the depletion is below what turf bears, or where rain on its way covers what is missing; else what refills to field capacity less that rain. Gross
    /// = net/efficiency. Where the sprinklers give faster (r) than the soil takes in (f), it is split so that no part leaves more than 5 mm standing: a part brings at most 5·r/(r − f).
    /// <para>Valid for turf in growth on level ground. A depletion that is not known (NaN) gives null: nothing is due by what is known. Rain that is not known (NaN) counts as none.</para>
    /// <para>Source: management allowed depletion, Allen et al. 1998, FAO-56, chapter 8 (MEMORY); deep and seldom against daily watering: Fu and Dernoeden 2009, Jordan et al. 2003, Crop Sci. 43:282
    /// (SEEN in summary); parts with pauses between them (common practice).</para>
    /// </summary>
    /// <param name="depletionMm">What is missing [mm].</param>
    /// <param name="allowedMm">What may be missing before the turf suffers [mm].</param>
    /// <param name="rainAheadMm">Rain forecast for the next days [mm].</param>
    /// <param name="soil">The texture.</param>
    /// <param name="efficiency">The share of the water given that reaches the roots [-], 0.1 to 1.</param>
    /// <param name="rateMmPerHour">How fast the sprinklers give water [mm/h], 1 to 200.</param>
    /// <exception cref="ArgumentOutOfRangeException">The efficiency or the rate lies outside its range.</exception>
    public static Watering? Due(
        double depletionMm, double allowedMm, double rainAheadMm, SoilTexture soil, double efficiency = UsualEfficiency, double rateMmPerHour = UsualRateMmPerHour)
    {
        Demand.Within(efficiency, 0.1, 1, "efficiency of watering [-]");
        Demand.Within(rateMmPerHour, 1, 200, "rate of the sprinklers [mm/h]");
        if (!(depletionMm >= allowedMm)) return null;
        double net = depletionMm - (double.IsNaN(rainAheadMm) ? 0 : rainAheadMm);
        if (net <= 0) return null;
        double gross = net / efficiency;
        double excess = rateMmPerHour - TurfWater.InfiltrationMmPerHour(soil);
        double largestPart = excess <= 0 ? double.PositiveInfinity : StandsAtMostMm * rateMmPerHour / excess;
        return new Watering(net, gross, Math.Max(1, (int)Math.Ceiling(gross / largestPart)));
    }

    /// <summary>
    /// Gives how many days lie between two waterings at a steady use: p·TAW/(Kc·ET0) [days].
    /// <para>Valid where no rain falls; infinite where nothing is used. NaN gives NaN.</para>
    /// <para>Source: Allen et al. 1998, FAO-56, chapter 8 (MEMORY).</para>
    /// </summary>
    /// <param name="turf">The family of grass.</param>
    /// <param name="totalMm">The total available water [mm].</param>
    /// <param name="referenceMm">Reference evapotranspiration [mm/day].</param>
    public static double IntervalDays(TurfType turf, double totalMm, double referenceMm) =>
        RootZone.AllowedMm(turf, totalMm, referenceMm) / (TurfWater.Coefficient(turf) * referenceMm);
}
