namespace GddWatch.Reports;

/// <summary>A word and what it means.</summary>
internal sealed record WordView(string Word, string Meaning);
