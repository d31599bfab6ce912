using GddWatch.Agronomy.Weather;
using GddWatch.Storage.Sql;

namespace GddWatch.Storage;

/// <summary>Keeps what came in from feeds. Nothing is ever overwritten: a changed value stands beside the one before, a forecast stays as it was issued.</summary>
public sealed class WeatherStore(Database database)
{
    /// <summary>By how far two values must differ to be a change: below that it is the rounding of a conversion.</summary>
    private const double SameWithin = 1e-9;

    /// <summary>How far a station may seem to move before it is told [°]: about 1 km.</summary>
    private const double MovedDegrees = 0.01;

    private static readonly WeatherVariable[] Variables = Enum.GetValues<WeatherVariable>();

    /// <summary>The last day that is kept of each site and feed.</summary>
    public Task<IReadOnlyDictionary<(string Site, string Feed), DateOnly>> LastDaysAsync(CancellationToken stop) => database.ReadAsync(
        async work => (IReadOnlyDictionary<(string, string), DateOnly>)(await work.QueryAsync<DailyValueRow>(WeatherSql.LastDays))
            .ToDictionary(row => (row.Site, row.Feed), row => StoredText.Day(row.Day)),
        stop);

    /// <summary>Keeps what was fetched, all or nothing. The same again changes nothing.</summary>
    /// <param name="fetched">What the feeds gave.</param>
    /// <param name="at">The instant at which they gave it.</param>
    /// <param name="stop">Stops it; nothing is kept then.</param>
    public Task<WeatherChanges> KeepAsync(IReadOnlyList<FetchedWeather> fetched, DateTimeOffset at, CancellationToken stop) => database.WriteAsync(
        async work =>
        {
            int added = 0;
            List<KeptChange> changed = [];
            List<(string, string, string, string)> remarks = [];
            foreach (FetchedWeather each in fetched)
            {
                if (each.Observed is { } observed) added += await KeepDaysAsync(work, each, observed, at, changed, remarks);
                if (each.Forecast is { } forecast) await work.ExecuteEachAsync(WeatherSql.KeepForecast, Rows(each, forecast));
                if (each.Position is { } position) await KeepPositionAsync(work, each, position, at, remarks);
            }

            return new WeatherChanges(added, changed, remarks);
        },
        stop);

    /// <summary>Everything that is kept.</summary>
    public Task<KeptWeather> LoadAsync(CancellationToken stop) => database.ReadAsync(
        async work =>
        {
            var builders = new Dictionary<(string, string), DailySeriesBuilder>();
            string? before = null;
            foreach (DailyValueRow row in await work.QueryAsync<DailyValueRow>(WeatherSql.LoadDays))
            {
                // Rows of one value come in the order in which they were seen: the last one stands.
                string key = $"{row.Site}\n{row.Feed}\n{row.Day}\n{row.Variable}";
                bool isCorrected = key == before;
                before = key;
                if (row.ReplacedAt is not null) continue;
                if (!builders.TryGetValue((row.Site, row.Feed), out DailySeriesBuilder? builder)) builders.Add((row.Site, row.Feed), builder = new DailySeriesBuilder());
                builder.Put(StoredText.Day(row.Day), DailyValueRow.VariableOf(row.Variable), row.Value, isCorrected ? Mark.Corrected : Mark.Measured);
            }

            Dictionary<(string, string), IReadOnlyList<Forecast>> forecasts = (await work.QueryAsync<ForecastValueRow>(WeatherSql.LoadForecasts))
                .GroupBy(row => (row.Site, row.Feed))
                .ToDictionary(feed => feed.Key, feed => (IReadOnlyList<Forecast>)[.. feed.GroupBy(row => row.IssuedAt).Select(issue => ForecastOf([.. issue]))]);
            return new KeptWeather(builders.ToDictionary(each => each.Key, each => each.Value.Build()!), forecasts);
        },
        stop);

    /// <summary>The values of a site that its sources have changed, as they stood before, by day.</summary>
    public Task<IReadOnlyList<ReplacedValue>> LoadReplacedAsync(string site, CancellationToken stop) => database.ReadAsync(
        async work => (IReadOnlyList<ReplacedValue>)
        [
            .. (await work.QueryAsync<DailyValueRow>(WeatherSql.LoadReplaced, new { site })).Select(row => new ReplacedValue(
                row.Feed, StoredText.Day(row.Day), DailyValueRow.VariableOf(row.Variable), row.Value, StoredText.Instant(row.SeenAt), StoredText.Instant(row.ReplacedAt!))),
        ],
        stop);

    private static async Task<int> KeepDaysAsync(
        Work work, FetchedWeather fetched, DailySeries observed, DateTimeOffset at, List<KeptChange> changed, List<(string, string, string, string)> remarks)
    {
        var from = new { site = fetched.Site, feed = fetched.Feed, day = StoredText.Of(observed.FirstDay) };
        Dictionary<(string, string), double> kept = (await work.QueryAsync<DailyValueRow>(WeatherSql.LoadDaysFrom, from)).ToDictionary(row => (row.Day, row.Variable), row => row.Value);
        List<DailyValueRow> added = [], replaced = [];
        foreach (WeatherVariable variable in Variables)
        {
            ReadOnlySpan<double> column = observed.Column(variable);
            for (int i = 0; i < column.Length; i++)
            {
                // A value that a source no longer gives is no change: replies leave out what they do not know.
                if (double.IsNaN(column[i])) continue;
                var row = new DailyValueRow
                {
                    Site = fetched.Site, Feed = fetched.Feed, Day = StoredText.Of(observed.DayAt(i)), Variable = $"{variable}", Value = column[i], SeenAt = StoredText.Of(at),
                };
                if (!kept.TryGetValue((row.Day, row.Variable), out double standing))
                {
                    added.Add(row);
                }
                else if (Math.Abs(standing - row.Value) > SameWithin)
                {
                    replaced.Add(row);
                    changed.Add(new KeptChange(row.Site, row.Feed, observed.DayAt(i), variable, standing, row.Value));
                }
            }
        }

        string? last = kept.Count == 0 ? null : kept.Keys.Max(each => each.Item1);
        if (last is not null && StoredText.Day(last) > observed.LastDay)
        {
            remarks.Add((fetched.Site, fetched.Feed, "went back", $"It went back in time: its last day was {last} before and is {StoredText.Of(observed.LastDay)} now. The later days that were kept stay."));
        }

        await work.ExecuteEachAsync(WeatherSql.Replace, replaced);
        await work.ExecuteEachAsync(WeatherSql.Insert, replaced.Concat(added));
        return added.Count;
    }

    private static async Task KeepPositionAsync(
        Work work, FetchedWeather fetched, (double Latitude, double Longitude, double? ElevationM) position, DateTimeOffset at, List<(string, string, string, string)> remarks)
    {
        FeedPositionRow? before = await work.FindAsync<FeedPositionRow>(WeatherSql.LastPosition, new { site = fetched.Site, feed = fetched.Feed });
        if (before is not null && Math.Abs(before.Latitude - position.Latitude) < MovedDegrees && Math.Abs(before.Longitude - position.Longitude) < MovedDegrees) return;
        await work.ExecuteAsync(WeatherSql.KeepPosition, new FeedPositionRow
        {
            Site = fetched.Site, Feed = fetched.Feed, SeenAt = StoredText.Of(at), Latitude = position.Latitude, Longitude = position.Longitude, ElevationM = position.ElevationM,
        });
        if (before is null) return;
        remarks.Add((
            fetched.Site,
            fetched.Feed,
            "moved",
            FormattableString.Invariant($"Its values were of {before.Latitude:0.000}, {before.Longitude:0.000} before and are of {position.Latitude:0.000}, {position.Longitude:0.000} now. Look whether it still speaks for this site.")));
    }

    private static IEnumerable<ForecastValueRow> Rows(FetchedWeather fetched, Forecast forecast)
    {
        DailySeries days = forecast.Days;
        foreach (WeatherVariable variable in Variables.Where(days.Has))
        {
            for (int i = 0; i < days.Count; i++)
            {
                double value = days.Column(variable)[i];
                if (double.IsNaN(value)) continue;
                yield return new ForecastValueRow
                {
                    Site = fetched.Site, Feed = fetched.Feed, IssuedAt = StoredText.Of(forecast.IssuedAt), IssuedOn = StoredText.Of(forecast.IssuedOn),
                    Day = StoredText.Of(days.DayAt(i)), Variable = $"{variable}", Value = value,
                };
            }
        }
    }

    private static Forecast ForecastOf(IReadOnlyList<ForecastValueRow> rows)
    {
        var builder = new DailySeriesBuilder();
        foreach (ForecastValueRow row in rows) builder.Put(StoredText.Day(row.Day), DailyValueRow.VariableOf(row.Variable), row.Value, Mark.Forecast);
        return new Forecast(StoredText.Day(rows[0].IssuedOn), StoredText.Instant(rows[0].IssuedAt), builder.Build()!);
    }
}
