namespace GddWatch.Agronomy.Heat;

/// <summary>The simple average of a day's extremes above a base: the first of McMaster and Wilhelm's two interpretations.</summary>
public static class SimpleAverage
{
    /// <summary>
    /// Gives a day's heat from the middle of its extremes, M = (Tx + Tn)/2.
    /// <para>DD = max(0, M − L) without cutoff; horizontal min(M, U) − L where M is above L; both intermediate forms max(0, 2U − L − M) where M is above U;
    /// vertical 0 where M is above U.</para>
    /// <para>Valid for any finite extremes in order, equal ones included, and any upper threshold above the base. A missing extreme (NaN) is refused: a missing
    /// day is not a day without heat; <see cref="HeatSum"/> takes columns with missing days.</para>
    /// </summary>
    /// <param name="cutoff">What happens above the upper threshold.</param>
    /// <param name="minimumC">Lowest temperature of the day Tn [°C].</param>
    /// <param name="maximumC">Highest temperature of the day Tx [°C].</param>
    /// <param name="baseC">Base L [°C].</param>
    /// <param name="upperC">Upper threshold U [°C]; null for none, and the cutoff then has nothing to act on.</param>
    /// <returns>Heat [°C-days], 0 or more.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An extreme is missing (NaN) or infinite, the minimum lies above the maximum, a threshold is not finite, the upper threshold
    /// is not above the base, or the cutoff is none of the named ones.</exception>
    /// <remarks>Source: McMaster &amp; Wilhelm 1997, Growing degree-days: one equation, two interpretations, Agric. For. Meteorol. 87:291-300 (SEEN; the horizontal
    /// form MEMORY; the others are the same cutoffs applied to M, derived).</remarks>
    public static double DegreeDays(DegreeDayCutoff cutoff, double minimumC, double maximumC, double baseC, double? upperC) =>
        CutoffRule.Single<MeanAllDay>(cutoff, minimumC, maximumC, baseC, upperC);
}
