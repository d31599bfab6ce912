using GddWatch.Agronomy.Windows;
using GddWatch.Storage;

namespace GddWatch.Watching;

/// <summary>What the last change of the configuration changed about a window: shown in <c>status</c>, never sent as a correction.</summary>
/// <param name="Site">The site's id.</param>
/// <param name="Treatment">The treatment's id.</param>
/// <param name="Season">The season.</param>
/// <param name="Words">What it changed, in a sentence.</param>
internal sealed record ConfigurationNote(string Site, string Treatment, int Season, string Words)
{
    public bool IsAbout(Window window) => window.Site.Id == Site && window.Treatment.Id == Treatment && window.Season.Year == Season;

    /// <summary>The notes that are kept; none where nothing has been kept yet.</summary>
    public static async Task<IReadOnlyList<ConfigurationNote>> LoadAsync(string dataFolder, TimeProvider clock, CancellationToken stop)
    {
        string path = DataFolder.Database(dataFolder);
        if (!File.Exists(path)) return [];
        await using Database database = await Database.OpenAsync(path, clock, stop);
        IReadOnlyList<KeptWindow> windows = await new WindowStore(database).LoadAsync(stop);
        return [.. windows
            .Where(window => window.ConfigurationNote is not null)
            .Select(window => new ConfigurationNote(window.Site, window.Treatment, window.Season, window.ConfigurationNote!))];
    }
}
