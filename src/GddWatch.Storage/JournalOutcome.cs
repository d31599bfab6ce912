using GddWatch.Agronomy.Journal;

namespace GddWatch.Storage;

/// <summary>What became of an entry that was to be recorded.</summary>
/// <param name="Entry">The entry.</param>
/// <param name="Number">The number under which it stands.</param>
/// <param name="AlreadyThere">Whether it stood there before in the same words, so that nothing changed.</param>
/// <param name="Mended">The number of the entry that it mended; null where it mended none.</param>
public sealed record JournalOutcome(JournalEntry Entry, long Number, bool AlreadyThere, long? Mended);
