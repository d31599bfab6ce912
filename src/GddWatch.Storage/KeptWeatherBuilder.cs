using GddWatch.Agronomy.Weather;

namespace GddWatch.Storage;

/// <summary>The kept weather as it goes on with what comes in.</summary>
internal sealed class KeptWeatherBuilder(KeptWeather before)
{
    private readonly Dictionary<(string Site, string Feed), DailySeries> days = [];
    private readonly Dictionary<(string Site, string Feed), IReadOnlyList<Forecast>> forecasts = [];

    /// <summary>Whether anything came in that was not kept before.</summary>
    public bool IsChanged => days.Count + forecasts.Count > 0;

    /// <summary>The days of a feed as they stand by now; null where none is kept.</summary>
    public DailySeries? DaysOf(string site, string feed) => days.GetValueOrDefault((site, feed)) ?? before.Days.GetValueOrDefault((site, feed));

    /// <summary>Puts in the days of a feed: what is new, and in place of what stood the values that its source has changed.</summary>
    public void Put(string site, string feed, DailySeries observed, IReadOnlyList<DailyValueRow> replaced)
    {
        var builder = new DailySeriesBuilder();
        foreach (DailyValueRow row in replaced) builder.Put(StoredText.Day(row.Day), DailyValueRow.VariableOf(row.Variable), row.Value, Mark.Corrected);
        if (DaysOf(site, feed) is { } standing) builder.AddMissingFrom(standing);
        builder.AddMissingFrom(observed);
        days[(site, feed)] = builder.Build()!;
    }

    /// <summary>Adds a forecast; one that was issued at the same instant is the same and kept already, and one without any value is none.</summary>
    public bool Add(string site, string feed, Forecast forecast)
    {
        IReadOnlyList<Forecast> known = forecasts.GetValueOrDefault((site, feed)) ?? before.ForecastsOf(site, feed);
        if (known.Any(each => each.IssuedAt == forecast.IssuedAt) || Known(forecast.Days) is not { } series) return false;
        forecasts[(site, feed)] = [.. known.Append(new Forecast(forecast.IssuedOn, forecast.IssuedAt.ToUniversalTime(), series)).OrderBy(each => each.IssuedAt)];
        return true;
    }

    /// <summary>All of it.</summary>
    public KeptWeather Build() => IsChanged ? new KeptWeather(With(before.Days, days), With(before.Forecasts, forecasts)) : before;

    private static Dictionary<(string Site, string Feed), T> With<T>(IReadOnlyDictionary<(string Site, string Feed), T> standing, Dictionary<(string Site, string Feed), T> newer)
    {
        var all = new Dictionary<(string Site, string Feed), T>(standing);
        foreach (((string Site, string Feed) feed, T value) in newer) all[feed] = value;
        return all;
    }

    /// <summary>A forecast's days as they are kept, each value marked; null where there is none.</summary>
    private static DailySeries? Known(DailySeries series)
    {
        var builder = new DailySeriesBuilder();
        foreach (WeatherVariable variable in Enum.GetValues<WeatherVariable>())
        {
            ReadOnlySpan<double> column = series.Column(variable);
            for (int i = 0; i < column.Length; i++)
            {
                if (!double.IsNaN(column[i])) builder.Put(series.DayAt(i), variable, column[i], Mark.Forecast);
            }
        }

        return builder.Build();
    }
}
