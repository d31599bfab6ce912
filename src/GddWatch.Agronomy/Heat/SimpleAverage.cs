namespace GddWatch.Agronomy.Heat;

/// <summary>The simple average of a day's extremes above a base: the first of McMaster and Wilhelm's two interpretations.</summary>
public static class SimpleAverage
{
    /// <summary>
    /// Gives a day's heat: DD = clip((Tx + Tn)/2, L, U) − L.
    /// <para>Source: McMaster &amp; Wilhelm 1997, Growing degree-days: one equation, two interpretations, Agric. For. Meteorol. 87:291-300 (SEEN; the form with an upper threshold MEMORY).</para>
    /// </summary>
    /// <param name="minimumC">Lowest temperature [°C]; NaN gives NaN.</param>
    /// <param name="maximumC">Highest temperature [°C]; NaN gives NaN.</param>
    /// <param name="baseC">Base L [°C].</param>
    /// <param name="upperC">Upper threshold U [°C], above the base; positive infinity for none.</param>
    /// <returns>Heat [°C-days], 0 or more.</returns>
    public static double DegreeDays(double minimumC, double maximumC, double baseC, double upperC)
    {
        double meanC = (minimumC + maximumC) / 2.0;
        if (double.IsNaN(meanC)) return double.NaN;
        return Math.Max(0.0, Math.Min(meanC, upperC) - baseC);
    }
}
