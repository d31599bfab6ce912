namespace GddWatch.Agronomy.Heat;

/// <summary>
/// A sine wave through a day's extremes: T = M + W·sin φ, with M = (Tx + Tn)/2 and W = (Tx − Tn)/2.
/// <para>With x = (c − M)/W, between the extremes: A(c) = W·(√(1 − x²) − x·arccos x)/π and F(c) = (arccos x)/π (derived, CALC).</para>
/// </summary>
internal readonly struct SineCurve : IDayCurve
{
    /// <inheritdoc/>
    public static double MeanAbove(double thresholdC, double minimumC, double maximumC)
    {
        if (thresholdC >= maximumC) return 0.0;
        if (thresholdC <= minimumC) return (minimumC + maximumC) / 2.0 - thresholdC;
        double x = Place(thresholdC, minimumC, maximumC);
        return (maximumC - minimumC) / 2.0 * (Math.Sqrt((1.0 - x) * (1.0 + x)) - x * Math.Acos(x)) / Math.PI;
    }

    /// <inheritdoc/>
    public static double FractionAbove(double thresholdC, double minimumC, double maximumC)
    {
        if (thresholdC >= maximumC) return 0.0;
        if (thresholdC <= minimumC) return 1.0;
        return Math.Acos(Place(thresholdC, minimumC, maximumC)) / Math.PI;
    }

    /// <summary>x, from −1 at the minimum to 1 at the maximum. Rounding may take it a breath beyond either, where there is no arccosine.</summary>
    private static double Place(double thresholdC, double minimumC, double maximumC) =>
        Math.Clamp((thresholdC - (minimumC + maximumC) / 2.0) / ((maximumC - minimumC) / 2.0), -1.0, 1.0);
}
