using GddWatch.Commands;
using GddWatch.Storage;

namespace GddWatch.Watching;

/// <summary>The weather that the service has kept.</summary>
internal static class KeptWeathers
{
    /// <summary>What was kept; nothing where the service never ran.</summary>
    public static Task<KeptWeather> LoadAsync(Keeping keeping, CancellationToken stop) => keeping.ReadAsync(
        KeptWeather.None, database => new WeatherStore(database).LoadAsync(stop), stop);

    /// <summary>The values of a site that its sources have changed, as they stood before.</summary>
    public static Task<IReadOnlyList<ReplacedValue>> LoadReplacedAsync(Keeping keeping, string site, CancellationToken stop) => keeping.ReadAsync(
        [], database => new WeatherStore(database).LoadReplacedAsync(site, stop), stop);
}
