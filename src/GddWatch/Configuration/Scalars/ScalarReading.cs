namespace GddWatch.Configuration.Scalars;

/// <summary>What came of reading a single value.</summary>
/// <param name="Value">The value, null where the text is refused.</param>
/// <param name="Problem">Why it is refused, in a sentence.</param>
/// <param name="Accepted">What would be accepted instead, where it is not simply what the kind accepts.</param>
public readonly record struct ScalarReading(object? Value, string? Problem, string? Accepted)
{
    /// <summary>A value that was read.</summary>
    public static ScalarReading Of(object value) => new(value, null, null);

    /// <summary>A text that is refused.</summary>
    public static ScalarReading Refused(string problem, string? accepted = null) => new(null, problem, accepted);
}
