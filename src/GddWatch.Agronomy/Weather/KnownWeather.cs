using GddWatch.Agronomy.Weather.Checks;
using GddWatch.Agronomy.Weather.Filling;

namespace GddWatch.Agronomy.Weather;

/// <summary>A site's weather as it is known on a day: what is doubted is taken out, holes are filled, each value has its mark.</summary>
/// <param name="Series">The days up to that one. A value that was doubted is marked as suspect and replaced by a filling, or missing where there is none.</param>
/// <param name="Doubts">What is doubted as of that day.</param>
/// <param name="Fillings">What was put into holes, with its means and its error [°C].</param>
/// <param name="Forecast">The latest forecast that is fresh on that day; null where there is none.</param>
public sealed record KnownWeather(DailySeries Series, IReadOnlyList<Doubt> Doubts, IReadOnlyList<FilledValue> Fillings, Forecast? Forecast)
{
    /// <summary>Every forecast that was issued by that day, the earliest first, the fresh one among them: from them is learned how far forecasts are off here.</summary>
    public IReadOnlyList<Forecast> Issued { get; init; } = Forecast is null ? [] : [Forecast];

    /// <summary>Weather that nobody doubts, with nothing near by and no forecast: its holes filled as of its last day.</summary>
    public static KnownWeather Undoubted(DailySeries series)
    {
        ArgumentNullException.ThrowIfNull(series);
        FilledSeries filled = FillingLadder.AsOf(series, series.LastDay, FillingLadder.FillingsOf(series, [], []));
        return new KnownWeather(filled.Series, [], filled.Fillings, null);
    }
}
