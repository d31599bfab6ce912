using GddWatch.Agronomy.Journal;
using GddWatch.Storage;

namespace GddWatch.Watching;

/// <summary>What was recorded, as kept in a data folder.</summary>
internal static class Journals
{
    /// <summary>The journals by the sites' ids; empty where nothing was kept there yet.</summary>
    public static async Task<IReadOnlyDictionary<string, SiteJournal>> LoadAsync(string dataFolder, TimeProvider clock, CancellationToken stop)
    {
        string path = DataFolder.Database(dataFolder);
        if (!File.Exists(path)) return new Dictionary<string, SiteJournal>();
        await using Database database = await Database.OpenAsync(path, clock, stop);
        return await new JournalStore(database).LoadAsync(stop);
    }

    /// <summary>Every entry, mended and withdrawn ones too, in the order in which they were recorded; none where nothing was kept there yet.</summary>
    public static async Task<IReadOnlyList<KeptEntry>> LoadHistoryAsync(string dataFolder, TimeProvider clock, CancellationToken stop)
    {
        string path = DataFolder.Database(dataFolder);
        if (!File.Exists(path)) return [];
        await using Database database = await Database.OpenAsync(path, clock, stop);
        return await new JournalStore(database).LoadHistoryAsync(stop);
    }
}
