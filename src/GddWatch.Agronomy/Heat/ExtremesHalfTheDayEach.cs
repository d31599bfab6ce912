namespace GddWatch.Agronomy.Heat;

/// <summary>
/// The minimum for half the day and the maximum for the other half: A(c) = (max(0, Tn − c) + max(0, Tx − c))/2, and F(c) is the share of the two above c.
/// </summary>
internal readonly struct ExtremesHalfTheDayEach : IDayCurve
{
    /// <inheritdoc/>
    public static double MeanAbove(double thresholdC, double minimumC, double maximumC) =>
        (Math.Max(0.0, minimumC - thresholdC) + Math.Max(0.0, maximumC - thresholdC)) / 2.0;

    /// <inheritdoc/>
    public static double FractionAbove(double thresholdC, double minimumC, double maximumC) =>
        ((minimumC > thresholdC ? 1.0 : 0.0) + (maximumC > thresholdC ? 1.0 : 0.0)) / 2.0;
}
