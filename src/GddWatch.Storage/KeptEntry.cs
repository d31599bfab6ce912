using GddWatch.Agronomy.Journal;

namespace GddWatch.Storage;

/// <summary>An entry of the journal as it is kept.</summary>
/// <param name="Number">The number by which people name it.</param>
/// <param name="Entry">What was recorded.</param>
/// <param name="RecordedAt">When it was recorded.</param>
/// <param name="ReplacedBy">The number of the entry that mended it; null where none did.</param>
/// <param name="WithdrawnAt">When it was withdrawn; null where it was not.</param>
/// <param name="WithdrawnBecause">Why; empty where it was not.</param>
public sealed record KeptEntry(long Number, JournalEntry Entry, DateTimeOffset RecordedAt, long? ReplacedBy, DateTimeOffset? WithdrawnAt, string WithdrawnBecause)
{
    /// <summary>Whether it stands: neither mended nor withdrawn.</summary>
    public bool IsInForce => ReplacedBy is null && WithdrawnAt is null;

    /// <summary>What became of it, as a clause such as "mended by number 2"; empty where it stands.</summary>
    public string Fate => this switch
    {
        { ReplacedBy: { } by } => $"mended by number {by}",
        { WithdrawnAt: not null } => $"withdrawn: {WithdrawnBecause}",
        _ => "",
    };
}
