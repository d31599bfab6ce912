using System.Globalization;
using GddWatch.Agronomy.Weather;
using GddWatch.Storage.Sql;

namespace GddWatch.Storage;

/// <summary>
/// Keeps what came in from feeds. Nothing is ever overwritten: a changed value stands beside the one before, a forecast stays as it was issued.
/// <para>What was read once stays at hand and goes on with what is kept, so that years of days are not read again each day. Whoever changes something raises a number: where another program did, all is
/// read again. For one caller at a time.</para>
/// </summary>
public sealed class WeatherStore(Database database)
{
    /// <summary>The name under which the number of the last change is kept.</summary>
    private const string LastChange = "weather-change";

    /// <summary>By how far two values must differ to be a change: below that it is the rounding of a conversion.</summary>
    private const double SameWithin = 1e-9;

    /// <summary>How far a station may seem to move before it is told [°]: about 1 km.</summary>
    private const double MovedDegrees = 0.01;

    private static readonly WeatherVariable[] Variables = Enum.GetValues<WeatherVariable>();

    private (string Change, KeptWeather Weather)? atHand;

    /// <summary>Keeps what was fetched, all or nothing. The same again changes nothing.</summary>
    /// <param name="fetched">What the feeds gave.</param>
    /// <param name="at">The instant at which they gave it.</param>
    /// <param name="stop">Stops it; nothing is kept then.</param>
    public async Task<WeatherChanges> KeepAsync(IReadOnlyList<FetchedWeather> fetched, DateTimeOffset at, CancellationToken stop)
    {
        (WeatherChanges changes, atHand) = await database.WriteAsync(
            async work =>
            {
                (string change, KeptWeather before) = await ReadAsync(work);
                List<DailyValueRow> added = [], replaced = [];
                List<ForecastValueRow> forecasts = [];
                List<KeptChange> changed = [];
                List<(string, string, string, string)> remarks = [];
                var after = new KeptWeatherBuilder(before);
                foreach (FetchedWeather each in fetched)
                {
                    if (each.Observed is { } observed) KeepDays(each, observed, at, after, added, replaced, changed, remarks);
                    if (each.Forecast is { } forecast && after.Add(each.Site, each.Feed, forecast)) forecasts.AddRange(Rows(each, forecast));
                    if (each.Position is { } position) await KeepPositionAsync(work, each, position, at, remarks);
                }

                await work.ExecuteEachAsync(WeatherSql.Replace, replaced);
                await work.ExecuteEachAsync(WeatherSql.Insert, replaced.Concat(added));
                await work.ExecuteEachAsync(WeatherSql.KeepForecast, forecasts);
                if (after.IsChanged) change = await MarkChangedAsync(work);
                return (new WeatherChanges(added.Count, changed, remarks), (change, after.Build()));
            },
            stop);
        return changes;
    }

    /// <summary>Everything that is kept.</summary>
    public async Task<KeptWeather> LoadAsync(CancellationToken stop)
    {
        (string Change, KeptWeather Weather) read = await database.ReadAtOnceAsync(ReadAsync, stop);
        atHand = read;
        return read.Weather;
    }

    /// <summary>The values of a site that its sources have changed, as they stood before, by day.</summary>
    public Task<IReadOnlyList<ReplacedValue>> LoadReplacedAsync(string site, CancellationToken stop) => database.ReadAsync(
        async work => (IReadOnlyList<ReplacedValue>)
        [
            .. (await work.QueryAsync<DailyValueRow>(WeatherSql.LoadReplaced, new { site })).Select(row => new ReplacedValue(
                row.Feed, StoredText.Day(row.Day), DailyValueRow.VariableOf(row.Variable), row.Value, StoredText.Instant(row.SeenAt), StoredText.Instant(row.ReplacedAt!))),
        ],
        stop);

    /// <summary>Says that what is kept is another from now on; gives the number of the change.</summary>
    internal static async Task<string> MarkChangedAsync(Work work)
    {
        string before = await work.FindAsync<string>(RegionValueSql.Find, new { name = LastChange }) ?? "0";
        string number = (long.Parse(before, CultureInfo.InvariantCulture) + 1).ToString(CultureInfo.InvariantCulture);
        await RegionValues.KeepAsync(work, LastChange, number);
        return number;
    }

    private async Task<(string Change, KeptWeather Weather)> ReadAsync(Work work)
    {
        string change = await work.FindAsync<string>(RegionValueSql.Find, new { name = LastChange }) ?? "";
        if (atHand is { } known && known.Change == change) return known;
        var days = new KeptDays();
        await work.ReadEachAsync(WeatherSql.LoadDays, row => days.Add(row.GetString(0), row.GetString(1), row.GetString(2), row.GetString(3), row.GetDouble(4), row.IsDBNull(5)));
        Dictionary<(string, string), IReadOnlyList<Forecast>> forecasts = (await work.QueryAsync<ForecastValueRow>(WeatherSql.LoadForecasts))
            .GroupBy(row => (row.Site, row.Feed))
            .ToDictionary(feed => feed.Key, feed => (IReadOnlyList<Forecast>)[.. feed.GroupBy(row => row.IssuedAt).Select(issue => ForecastOf([.. issue]))]);
        return (change, new KeptWeather(days.Build(), forecasts));
    }

    private static void KeepDays(
        FetchedWeather fetched, DailySeries observed, DateTimeOffset at, KeptWeatherBuilder after,
        List<DailyValueRow> added, List<DailyValueRow> replaced, List<KeptChange> changed, List<(string, string, string, string)> remarks)
    {
        DailySeries? kept = after.DaysOf(fetched.Site, fetched.Feed);
        int addedBefore = added.Count, replacedBefore = replaced.Count;
        string seenAt = StoredText.Of(at);
        foreach (WeatherVariable variable in Variables)
        {
            ReadOnlySpan<double> column = observed.Column(variable);
            ReadOnlySpan<double> keptColumn = kept is null ? [] : kept.Column(variable);
            for (int i = 0; i < column.Length; i++)
            {
                // A value that a source no longer gives is no change: replies leave out what they do not know.
                if (double.IsNaN(column[i])) continue;
                int place = kept?.IndexOf(observed.DayAt(i)) ?? -1;
                double standing = (uint)place < (uint)keptColumn.Length ? keptColumn[place] : double.NaN;
                if (Math.Abs(standing - column[i]) <= SameWithin) continue;
                (double.IsNaN(standing) ? added : replaced).Add(new DailyValueRow
                {
                    Site = fetched.Site, Feed = fetched.Feed, Day = StoredText.Of(observed.DayAt(i)), Variable = $"{variable}", Value = column[i], SeenAt = seenAt,
                });
                if (!double.IsNaN(standing)) changed.Add(new KeptChange(fetched.Site, fetched.Feed, observed.DayAt(i), variable, standing, column[i]));
            }
        }

        if (kept is not null && kept.LastDay > observed.LastDay)
        {
            remarks.Add((fetched.Site, fetched.Feed, "went back", $"It went back in time: its last day was {StoredText.Of(kept.LastDay)} before and is {StoredText.Of(observed.LastDay)} now. The later days that were kept stay."));
        }

        if (added.Count + replaced.Count > addedBefore + replacedBefore) after.Put(fetched.Site, fetched.Feed, observed, replaced[replacedBefore..]);
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
