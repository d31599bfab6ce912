using GddWatch.Storage;

namespace GddWatch.Watching;

/// <summary>The weather that the service has kept in a data folder.</summary>
internal static class KeptWeathers
{
    /// <summary>What was kept; nothing where the service never ran there.</summary>
    public static async Task<KeptWeather> LoadAsync(string dataFolder, TimeProvider clock, CancellationToken stop)
    {
        string path = DataFolder.Database(dataFolder);
        if (!File.Exists(path)) return KeptWeather.None;
        await using Database database = await Database.OpenAsync(path, clock, stop);
        return await new WeatherStore(database).LoadAsync(stop);
    }

    /// <summary>The values of a site that its sources have changed, as they stood before.</summary>
    public static async Task<IReadOnlyList<ReplacedValue>> LoadReplacedAsync(string dataFolder, string site, TimeProvider clock, CancellationToken stop)
    {
        string path = DataFolder.Database(dataFolder);
        if (!File.Exists(path)) return [];
        await using Database database = await Database.OpenAsync(path, clock, stop);
        return await new WeatherStore(database).LoadReplacedAsync(site, stop);
    }
}
