namespace GddWatch.Agronomy.Treatments.Conditions;

/// <summary>From which side a value passes a threshold.</summary>
public enum Passing
{
    /// <summary>At or above the threshold.</summary>
    RisesAbove,

    /// <summary>At or below the threshold.</summary>
    FallsBelow,
}
