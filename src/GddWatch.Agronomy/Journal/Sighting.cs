namespace GddWatch.Agronomy.Journal;

/// <summary>Something seen for the first time in a season, such as the first beetle or the first seedlings.</summary>
public sealed record Sighting : JournalEntry
{
    /// <summary>What was seen, short and plain, such as "first-beetle".</summary>
    public required string What { get; init; }
}
