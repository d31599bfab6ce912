namespace GddWatch.Agronomy.Heat;

/// <summary>The middle of the extremes all day long: A(c) = max(0, M − c), and F(c) is 1 below M, else 0.</summary>
internal readonly struct MeanAllDay : IDayCurve
{
    /// <inheritdoc/>
    public static double MeanAbove(double thresholdC, double minimumC, double maximumC) =>
        Math.Max(0.0, (minimumC + maximumC) / 2.0 - thresholdC);

    /// <inheritdoc/>
    public static double FractionAbove(double thresholdC, double minimumC, double maximumC) =>
        (minimumC + maximumC) / 2.0 > thresholdC ? 1.0 : 0.0;
}
