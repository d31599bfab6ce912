namespace GddWatch.Agronomy.Heat;

/// <summary>The average of a day's extremes, each held within the thresholds first: the second of McMaster and Wilhelm's two interpretations, and maize's "86/50".</summary>
public static class AverageWithLimitedExtremes
{
    /// <summary>
    /// Gives a day's heat as the mean of the heat at its two extremes.
    /// <para>Without cutoff each extreme below L counts as L: DD = (max(Tn, L) + max(Tx, L))/2 − L. Horizontal also counts each above U as U:
    /// DD = (clip(Tn, L, U) + clip(Tx, L, U))/2 − L. The other cutoffs act on each extreme alike: an extreme T above U gives 2U − L − T in the intermediate forms
    /// (floored over the day, or pointwise for each extreme) and 0 in the vertical one.</para>
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
    /// <remarks>Source: McMaster &amp; Wilhelm 1997, Growing degree-days: one equation, two interpretations, Agric. For. Meteorol. 87:291-300 (SEEN); the horizontal
    /// form as in extension lessons on maize (SEEN); the other cutoffs derived.</remarks>
    public static double DegreeDays(DegreeDayCutoff cutoff, double minimumC, double maximumC, double baseC, double? upperC) =>
        CutoffRule.Single<ExtremesHalfTheDayEach>(cutoff, minimumC, maximumC, baseC, upperC);
}
