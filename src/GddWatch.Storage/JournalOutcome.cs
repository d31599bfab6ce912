using GddWatch.Agronomy.Journal;

namespace GddWatch.Storage;

/// <summary>What became of an entry that was to be recorded.</summary>
/// <param name="Entry">The entry.</param>
/// <param name="Number">The number under which it stands, or stood where it was left aside.</param>
/// <param name="Change">What recording it changed.</param>
/// <param name="Mended">The numbers of the entries for which it stands now; empty where it mended none.</param>
/// <param name="Earlier">The entry as it was mended or withdrawn before; null where it was not left aside.</param>
public sealed record JournalOutcome(JournalEntry Entry, long Number, JournalChange Change, IReadOnlyList<long> Mended, KeptEntry? Earlier = null);
