namespace GddWatch.Agronomy.Heat;

/// <summary>Heat under a straight rise from today's minimum and a straight fall to tomorrow's.</summary>
public static class DoubleTriangle
{
    /// <summary>
    /// Gives a day's heat under a straight rise from the minimum to the maximum and a straight fall to the next day's minimum.
    /// <para>DD = (DD(Tn, Tx) + DD(Tn′, Tx))/2, each half reckoned as <see cref="SingleTriangle"/> does, with the floor of the intermediate cutoff in each half.</para>
    /// <para>Where the next minimum lies above the day's maximum, the second half rises from the one to the other.</para>
    /// <para>Valid for any finite extremes in order, equal ones included, and any upper threshold above the base. A missing extreme (NaN) is refused: a missing
    /// day is not a day without heat; <see cref="HeatSum"/> takes columns with missing days. So is a missing next minimum: who lacks
    /// it hands in the day's own and calls the result provisional, as <see cref="HeatSum"/> does.</para>
    /// </summary>
    /// <param name="cutoff">What happens above the upper threshold.</param>
    /// <param name="minimumC">Lowest temperature of the day Tn [°C].</param>
    /// <param name="maximumC">Highest temperature of the day Tx [°C].</param>
    /// <param name="nextMinimumC">Lowest temperature of the next day Tn′ [°C].</param>
    /// <param name="baseC">Base L [°C].</param>
    /// <param name="upperC">Upper threshold U [°C]; null for none, and the cutoff then has nothing to act on.</param>
    /// <returns>Heat [°C-days], 0 or more.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An extreme is missing (NaN) or infinite, the minimum lies above the maximum, a threshold is not finite, the upper threshold
    /// is not above the base, or the cutoff is none of the named ones.</exception>
    /// <remarks>Source: Sevacherian, Stern &amp; Mueller 1977 (MEMORY).
    /// Cutoffs: Zalom et al. 1983, Degree-days: the calculation and use of heat units in pest management, Univ. California
    /// Leaflet 21373 (MEMORY). The formulas are derived and checked by quadrature (CALC).</remarks>
    public static double DegreeDays(
        DegreeDayCutoff cutoff, double minimumC, double maximumC, double nextMinimumC, double baseC, double? upperC) =>
        CutoffRule.Double<TriangleCurve>(cutoff, minimumC, maximumC, nextMinimumC, baseC, upperC);
}
