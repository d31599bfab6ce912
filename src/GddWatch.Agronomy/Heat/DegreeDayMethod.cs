namespace GddWatch.Agronomy.Heat;

/// <summary>How a day's heat is reckoned from its extremes. A threshold belongs to its method and is never compared with another's sum.</summary>
public enum DegreeDayMethod
{
    /// <summary>The middle of the extremes less the base, not below zero.</summary>
    SimpleAverage,

    /// <summary>Each extreme is first held between base and upper threshold, then averaged.</summary>
    AverageWithLimitedExtremes,

    /// <summary>A sine wave through the day's extremes.</summary>
    SingleSine,

    /// <summary>Half a sine wave from today's minimum, half to tomorrow's.</summary>
    DoubleSine,

    /// <summary>A triangle through the day's extremes.</summary>
    SingleTriangle,

    /// <summary>Half a triangle from today's minimum, half to tomorrow's.</summary>
    DoubleTriangle,
}
