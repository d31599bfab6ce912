using GddWatch.Agronomy.Weather;

namespace GddWatch.Storage;

/// <summary>The weather that was kept.</summary>
/// <param name="Days">The days by site and feed; a value that its source has changed is marked as corrected.</param>
/// <param name="Forecasts">The forecasts by site and feed, as they were issued, the earliest first.</param>
public sealed record KeptWeather(
    IReadOnlyDictionary<(string Site, string Feed), DailySeries> Days, IReadOnlyDictionary<(string Site, string Feed), IReadOnlyList<Forecast>> Forecasts)
{
    /// <summary>Nothing kept.</summary>
    public static KeptWeather None { get; } = new(new Dictionary<(string, string), DailySeries>(), new Dictionary<(string, string), IReadOnlyList<Forecast>>());

    /// <summary>The forecasts of a feed for a site.</summary>
    public IReadOnlyList<Forecast> ForecastsOf(string site, string feed) => Forecasts.GetValueOrDefault((site, feed), []);
}
