namespace GddWatch.Agronomy.Changes;

/// <summary>A number that decided something, as a reader sees it: with its unit.</summary>
/// <param name="Name">What was measured or estimated.</param>
/// <param name="Value">The value with its unit.</param>
/// <param name="Limit">What it was held against, with its unit; may be empty.</param>
public sealed record Figure(string Name, string Value, string Limit);
