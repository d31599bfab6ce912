namespace GddWatch.Agronomy.Heat;

/// <summary>
/// A straight rise and fall between a day's extremes. Between them A(c) = (Tx − c)²/(2(Tx − Tn)) and F(c) = (Tx − c)/(Tx − Tn) (derived, CALC).
/// </summary>
internal readonly struct TriangleCurve : IDayCurve
{
    /// <inheritdoc/>
    public static double MeanAbove(double thresholdC, double minimumC, double maximumC)
    {
        if (thresholdC >= maximumC) return 0.0;
        if (thresholdC <= minimumC) return (minimumC + maximumC) / 2.0 - thresholdC;
        double aboveC = maximumC - thresholdC;
        return aboveC * aboveC / (2.0 * (maximumC - minimumC));
    }

    /// <inheritdoc/>
    public static double FractionAbove(double thresholdC, double minimumC, double maximumC)
    {
        if (thresholdC >= maximumC) return 0.0;
        if (thresholdC <= minimumC) return 1.0;
        return (maximumC - thresholdC) / (maximumC - minimumC);
    }
}
