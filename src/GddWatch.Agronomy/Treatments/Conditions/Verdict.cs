namespace GddWatch.Agronomy.Treatments.Conditions;

/// <summary>What a condition says of one day. In this order, so that "all" is the least of its parts and "any" the most.</summary>
public enum Verdict : byte
{
    /// <summary>The condition is not met.</summary>
    No,

    /// <summary>Too little is known to say.</summary>
    Unknown,

    /// <summary>The condition is met.</summary>
    Yes,
}
