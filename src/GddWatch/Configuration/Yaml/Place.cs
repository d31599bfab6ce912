namespace GddWatch.Configuration.Yaml;

/// <summary>Where something stands in a file.</summary>
/// <param name="Line">The line, from 1.</param>
/// <param name="Column">The column, from 1.</param>
/// <param name="Text">The text that stands there, null where it is a list or a group of keys.</param>
public sealed record Place(int Line, int Column, string? Text);
