namespace GddWatch.Agronomy.Heat;

/// <summary>
/// What a degree-day method assumes of the temperature between a day's extremes, as two functions of a threshold c. Every cutoff follows from them
/// (<see cref="CutoffRule"/>). Extremes are known and in order when they come here.
/// </summary>
internal interface IDayCurve
{
    /// <summary>A(c), the day's mean of max(0, T − c) [°C].</summary>
    static abstract double MeanAbove(double thresholdC, double minimumC, double maximumC);

    /// <summary>F(c), the fraction of the day with T &gt; c, 0 to 1.</summary>
    static abstract double FractionAbove(double thresholdC, double minimumC, double maximumC);
}
