namespace GddWatch.Agronomy.Treatments.Conditions;

/// <summary>Which of a day's air temperatures is meant.</summary>
public enum AirValue
{
    /// <summary>The lowest of the day.</summary>
    Minimum,

    /// <summary>The highest of the day.</summary>
    Maximum,

    /// <summary>The middle of the two.</summary>
    Mean,
}
