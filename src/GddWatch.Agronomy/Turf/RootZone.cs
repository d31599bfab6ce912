using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Turf;

/// <summary>
/// The water missing from the root zone, as a step from one day to the next. What is not known is carried as a range that surely holds the truth: at the start of a record anything from nothing to
/// all may be missing, a missing day widens the range, and each soaking rain or spell of drying narrows it again. So nothing is assumed of the start, and a hole in the rain costs no more days than
/// it must.
/// </summary>
/// <param name="LeastMm">The least that may be missing [mm].</param>
/// <param name="MostMm">The most that may be missing [mm].</param>
public readonly record struct RootZone(double LeastMm, double MostMm)
{
    /// <summary>How wide the range may be for the depletion to count as known [mm].</summary>
    public const double KnownWithinMm = 3;

    /// <summary>What a day can evaporate at most, where its temperatures are missing [mm].</summary>
    private const double MostEvaporationMm = 10;

    /// <summary>Rain below this share of the reference evapotranspiration does not reach the roots. Source: Allen et al. 1998, FAO-56, chapter 8 (MEMORY).</summary>
    private const double RainThatCounts = 0.2;

    /// <summary>What is missing [mm]; NaN where the range is too wide to say.</summary>
    public double DepletionMm => MostMm - LeastMm <= KnownWithinMm ? (LeastMm + MostMm) / 2 : double.NaN;

    /// <summary>A root zone of which nothing is known.</summary>
    /// <param name="totalMm">The total available water [mm].</param>
    public static RootZone Unknown(double totalMm) => new(0, totalMm);

    /// <summary>
    /// Gives the total available water TAW = 1000·(θFC − θWP)·Zr, here the share held by the texture times the depth of the roots [mm].
    /// <para>Valid for depths of 50 to 2000 mm.</para>
    /// <para>Source: Allen et al. 1998, FAO-56, equation 82 (MEMORY).</para>
    /// </summary>
    /// <param name="soil">The texture.</param>
    /// <param name="rootDepthMm">How deep the roots reach [mm].</param>
    /// <exception cref="ArgumentOutOfRangeException">The depth lies outside its range.</exception>
    public static double TotalMm(SoilTexture soil, double rootDepthMm = TurfWater.UsualRootDepthMm) =>
        TurfWater.AvailableShare(soil) * Demand.Within(rootDepthMm, 50, 2000, "depth of the roots [mm]");

    /// <summary>
    /// Gives the state at the end of the next day: Dr(i) = Dr(i−1) − P − I + Ks·Kc·ET0, kept within 0 and TAW, with Ks = 1 while Dr is at most p·TAW and (TAW − Dr)/((1 − p)·TAW) beyond. Rain below
    /// 0.2·ET0 is left out; what the soil cannot hold drains. A day takes at most what is left, so that in thin soils too more in the ground never comes to less. Runoff is not reckoned, so that on
    /// slopes less comes in than stands here; snow counts on the day it falls.
    /// <para>Valid for turf in growth on level ground. A missing ET0 (NaN) may have been anything from 0 to 10 mm, a missing rain or watering anything at all.</para>
    /// <para>Source: Allen et al. 1998, FAO-56, equations 84 and 85 (MEMORY; Ks CALC).</para>
    /// </summary>
    /// <param name="turf">The family of grass.</param>
    /// <param name="totalMm">The total available water TAW [mm].</param>
    /// <param name="referenceMm">Reference evapotranspiration of the day [mm], NaN where not known.</param>
    /// <param name="rainMm">Rain of the day [mm], NaN where not known.</param>
    /// <param name="isWatered">Whether the lawn was watered deeply on that day, which refills the root zone.</param>
    /// <param name="irrigationMm">What a watering brought into the soil [mm], 0 for none, NaN for one of which the depth is not known.</param>
    public RootZone Next(TurfType turf, double totalMm, double referenceMm, double rainMm, bool isWatered = false, double irrigationMm = 0)
    {
        if (isWatered) return new RootZone(0, 0);
        bool isKnown = !double.IsNaN(referenceMm);
        double leastDrying = isKnown ? referenceMm : 0;
        double mostDrying = isKnown ? referenceMm : MostEvaporationMm;
        bool anything = double.IsNaN(rainMm) || double.IsNaN(irrigationMm);
        double least = anything ? 0 : Step(LeastMm, turf, totalMm, leastDrying, RainInto(rainMm, leastDrying) + irrigationMm);
        double most = Step(MostMm, turf, totalMm, mostDrying, RainInto(rainMm, mostDrying) + (double.IsNaN(irrigationMm) ? 0 : irrigationMm));
        return new RootZone(least, most);
    }

    /// <summary>
    /// Gives the depletion that turf bears before it suffers, p·TAW [mm].
    /// <para>Valid as <see cref="TurfWater.AllowedShare"/>; NaN gives NaN.</para>
    /// <para>Source: Allen et al. 1998, FAO-56, equation 83 (MEMORY).</para>
    /// </summary>
    /// <param name="turf">The family of grass.</param>
    /// <param name="totalMm">The total available water TAW [mm].</param>
    /// <param name="referenceMm">Reference evapotranspiration [mm/day].</param>
    public static double AllowedMm(TurfType turf, double totalMm, double referenceMm) =>
        TurfWater.AllowedShare(turf, TurfWater.Coefficient(turf) * referenceMm) * totalMm;

    /// <summary>
    /// Gives the stress coefficient Ks [-]: 1 while the depletion is at most p·TAW, then falling in a line to 0 at TAW.
    /// <para>Valid for depletions within 0 and TAW.</para>
    /// <para>Source: Allen et al. 1998, FAO-56, equation 84 (MEMORY; CALC: TAW 25.5, p 0.4, Dr 15 gives 0.68627).</para>
    /// </summary>
    /// <param name="depletionMm">The depletion Dr [mm].</param>
    /// <param name="totalMm">The total available water TAW [mm].</param>
    /// <param name="allowedShare">The share p [-].</param>
    public static double Stress(double depletionMm, double totalMm, double allowedShare) =>
        depletionMm <= allowedShare * totalMm ? 1 : (totalMm - depletionMm) / ((1 - allowedShare) * totalMm);

    /// <summary>The rain that reaches the roots [mm]; of a missing one, what is sure: none.</summary>
    private static double RainInto(double rainMm, double referenceMm) => rainMm >= RainThatCounts * referenceMm ? rainMm : 0;

    private static double Step(double depletionMm, TurfType turf, double totalMm, double referenceMm, double waterMm)
    {
        double drying = TurfWater.Coefficient(turf) * referenceMm;
        double stress = Stress(depletionMm, totalMm, TurfWater.AllowedShare(turf, drying));
        return Math.Max(0, Math.Min(depletionMm + stress * drying, totalMm) - waterMm);
    }
}
