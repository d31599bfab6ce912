namespace GddWatch.Agronomy.Journal;

/// <summary>A mowing.</summary>
public sealed record Mowing : JournalEntry;
