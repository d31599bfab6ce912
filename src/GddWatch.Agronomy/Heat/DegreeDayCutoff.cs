namespace GddWatch.Agronomy.Heat;

/// <summary>What happens above the upper threshold.</summary>
public enum DegreeDayCutoff
{
    /// <summary>Nothing: warmth counts without limit.</summary>
    None,

    /// <summary>Development goes on at the rate of the upper threshold.</summary>
    Horizontal,

    /// <summary>The rate falls as fast as it rose; a day's sum is not below zero.</summary>
    Intermediate,

    /// <summary>The rate falls as fast as it rose, and is at no moment of the day below zero.</summary>
    IntermediatePointwise,

    /// <summary>Development stops above the upper threshold.</summary>
    Vertical,
}
