using GddWatch.Agronomy.Places;

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

    /// <summary>The longest part of a watering that goes in before water stands on the surface [h]; DESIGN.</summary>
    private const double LongestCycleHours = 0.25;

    /// <summary>
    /// Gives the watering that is due: none while the depletion is below what turf bears, or where rain on its way covers what is missing; else what refills to field capacity less that rain. Gross
    /// = net/efficiency. Where the sprinklers give faster than the soil takes in, it is split into parts of at most what a quarter of an hour may bring above that.
    /// <para>Valid for turf in growth on level ground. A depletion that is not known (NaN) gives null: nothing is due by what is known.</para>
    /// <para>Source: management allowed depletion, Allen et al. 1998, FAO-56, chapter 8 (MEMORY); deep and seldom against daily watering: Fu and Dernoeden 2009, Jordan et al. 2003, Crop Sci. 43:282
    /// (SEEN in summary).</para>
    /// </summary>
    /// <param name="depletionMm">What is missing [mm].</param>
    /// <param name="allowedMm">What may be missing before the turf suffers [mm].</param>
    /// <param name="rainAheadMm">Rain forecast for the next days [mm]; 0 where nothing is known.</param>
    /// <param name="soil">The texture.</param>
    /// <param name="efficiency">The share of the water given that reaches the roots [-].</param>
    /// <param name="rateMmPerHour">How fast the sprinklers give water [mm/h].</param>
    public static Watering? Due(
        double depletionMm, double allowedMm, double rainAheadMm, SoilTexture soil, double efficiency = UsualEfficiency, double rateMmPerHour = UsualRateMmPerHour)
    {
        if (!(depletionMm >= allowedMm)) return null;
        double net = depletionMm - rainAheadMm;
        if (net <= 0) return null;
        double gross = net / efficiency;
        double excess = rateMmPerHour - TurfWater.InfiltrationMmPerHour(soil);
        int cycles = excess <= 0 ? 1 : Math.Max(1, (int)Math.Ceiling(gross / (rateMmPerHour * LongestCycleHours)));
        return new Watering(net, gross, cycles);
    }

    /// <summary>
    /// Gives how many days lie between two waterings at a steady use: p·TAW/(Kc·ET0) [days].
    /// <para>Valid where no rain falls.</para>
    /// <para>Source: Allen et al. 1998, FAO-56, chapter 8 (MEMORY).</para>
    /// </summary>
    /// <param name="turf">The family of grass.</param>
    /// <param name="totalMm">The total available water [mm].</param>
    /// <param name="referenceMm">Reference evapotranspiration [mm/day].</param>
    public static double IntervalDays(TurfType turf, double totalMm, double referenceMm) =>
        RootZone.AllowedMm(turf, totalMm, referenceMm) / (TurfWater.Coefficient(turf) * referenceMm);
}
