namespace GddWatch.Agronomy.Heat;

/// <summary>Heat under a triangle through a day's extremes.</summary>
public static class SingleTriangle
{
    /// <summary>
    /// Gives a day's heat under a straight rise from the minimum to the maximum and a straight fall back.
    /// <para>A(c) is the day's mean of max(0, T − c), F(c) the fraction of the day above c. Between the extremes:
    /// A(c) = (Tx − c)²/(2(Tx − Tn)), F(c) = (Tx − c)/(Tx − Tn). Outside: A = (Tx + Tn)/2 − c and F = 1 below Tn, both 0 above Tx.</para>
    /// <para>DD = A(L) without cutoff; horizontal A(L) − A(U); intermediate max(0, A(L) − 2A(U)); intermediate pointwise A(L) − 2A(U) + A(2U − L); vertical
    /// A(L) − A(U) − (U − L)·F(U).</para>
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
    /// <remarks>Source: Lindsey &amp; Newman 1956; Sevacherian, Stern &amp; Mueller 1977 (MEMORY).
    /// Cutoffs: Zalom et al. 1983, Degree-days: the calculation and use of heat units in pest management, Univ. California
    /// Leaflet 21373 (MEMORY). The formulas are derived and checked by quadrature (CALC).</remarks>
    public static double DegreeDays(DegreeDayCutoff cutoff, double minimumC, double maximumC, double baseC, double? upperC) =>
        CutoffRule.Single<TriangleCurve>(cutoff, minimumC, maximumC, baseC, upperC);
}
