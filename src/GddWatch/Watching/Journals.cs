using GddWatch.Agronomy.Journal;
using GddWatch.Commands;
using GddWatch.Storage;

namespace GddWatch.Watching;

/// <summary>What was recorded, as it is kept.</summary>
internal static class Journals
{
    /// <summary>The journals by the sites' ids; empty where nothing was kept yet.</summary>
    public static Task<IReadOnlyDictionary<string, SiteJournal>> LoadAsync(Keeping keeping, CancellationToken stop) => keeping.ReadAsync(
        new Dictionary<string, SiteJournal>(), database => new JournalStore(database).LoadAsync(stop), stop);

    /// <summary>Every entry, mended and withdrawn ones too, in the order in which they were recorded; none where nothing was kept yet.</summary>
    public static Task<IReadOnlyList<KeptEntry>> LoadHistoryAsync(Keeping keeping, CancellationToken stop) => keeping.ReadAsync(
        [], database => new JournalStore(database).LoadHistoryAsync(stop), stop);
}
