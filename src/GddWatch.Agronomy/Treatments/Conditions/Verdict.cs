namespace GddWatch.Agronomy.Treatments.Conditions;

/// <summary>What a condition says of one day.</summary>
public enum Verdict
{
    /// <summary>The condition is not met.</summary>
    No,

    /// <summary>Too little is known to say.</summary>
    Unknown,

    /// <summary>The condition is met.</summary>
    Yes,
}
