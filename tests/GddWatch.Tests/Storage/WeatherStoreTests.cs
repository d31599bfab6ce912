using GddWatch.Agronomy.Weather;
using GddWatch.Storage;
using GddWatch.Storage.Upkeep;
using Xunit;

namespace GddWatch.Tests.Storage;

public abstract class WeatherStoreTests(DatabaseKind kind) : IAsyncDisposable
{
    private static readonly DateOnly First = new(2026, 4, 1);

    private readonly TestDatabase place = new(kind);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask DisposeAsync()
    {
        await place.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    [Fact]
    public async Task The_same_days_twice_change_nothing()
    {
        await using Database database = await place.OpenAsync(Stop);
        var store = new WeatherStore(database);
        Assert.Equal(20, (await store.KeepAsync([Fetched(Days(10))], Kept.Morning, Stop)).Added);
        WeatherChanges again = await store.KeepAsync([Fetched(Days(10))], Kept.Morning.AddDays(1), Stop);
        Assert.Equal(0, again.Added);
        Assert.Empty(again.Changed);
        Assert.Empty(again.Remarks);
        DailySeries kept = (await store.LoadAsync(Stop)).Days[("lawn", "a service")];
        Assert.Equal(10, kept.Count);
        Assert.Equal(Mark.Measured, kept.QualityAt(3));
    }

    [Fact]
    public async Task A_changed_value_is_marked_as_corrected_and_the_one_before_stays_in_the_table()
    {
        await using Database database = await place.OpenAsync(Stop);
        var store = new WeatherStore(database);
        await store.KeepAsync([Fetched(Days(10))], Kept.Morning, Stop);
        WeatherChanges changes = await store.KeepAsync([Fetched(Days(10, (day, c) => day == First.AddDays(4) ? c + 2 : c))], Kept.Morning.AddDays(1), Stop);
        Assert.Equal(2, changes.Changed.Count);
        Assert.All(changes.Changed, change => Assert.Equal(change.Before + 2, change.After, 9));
        DailySeries kept = (await store.LoadAsync(Stop)).Days[("lawn", "a service")];
        Assert.Equal(Mark.Corrected, kept.QualityAt(4));
        Assert.Equal(Mark.Measured, kept.QualityAt(5));
        IReadOnlyList<ReplacedValue> before = await store.LoadReplacedAsync("lawn", Stop);
        Assert.Equal([4.4, 15.7], before.Select(value => Math.Round(value.Value, 9)).Order());
        Assert.All(before, value => Assert.Equal((First.AddDays(4), Kept.Morning, Kept.Morning.AddDays(1)), (value.Day, value.SeenAt, value.ReplacedAt)));
    }

    [Fact]
    public async Task A_day_that_a_later_reply_leaves_out_stays()
    {
        await using Database database = await place.OpenAsync(Stop);
        var store = new WeatherStore(database);
        await store.KeepAsync([Fetched(Days(10))], Kept.Morning, Stop);
        WeatherChanges changes = await store.KeepAsync([Fetched(Days(6))], Kept.Morning.AddDays(1), Stop);
        Assert.Contains("went back in time", Assert.Single(changes.Remarks).Words, StringComparison.Ordinal);
        Assert.Equal(10, (await store.LoadAsync(Stop)).Days[("lawn", "a service")].Count);
    }

    [Fact]
    public async Task Every_forecast_is_kept_as_it_was_issued()
    {
        await using Database database = await place.OpenAsync(Stop);
        var store = new WeatherStore(database);
        var monday = new Forecast(First, Kept.Morning, Days(7));
        var tuesday = new Forecast(First.AddDays(1), Kept.Morning.AddDays(1), Days(7, (_, c) => c + 1));
        foreach (Forecast forecast in (Forecast[])[monday, tuesday, monday]) await store.KeepAsync([Fetched(null) with { Forecast = forecast }], forecast.IssuedAt, Stop);
        IReadOnlyList<Forecast> kept = (await store.LoadAsync(Stop)).ForecastsOf("lawn", "a service");
        Assert.Equal([First, First.AddDays(1)], kept.Select(each => each.IssuedOn));
        Assert.Equal(monday.Days.MaximumAirC[2] + 1, kept[1].Days.MaximumAirC[2], 9);
        Assert.Equal(Mark.Forecast, kept[0].Days.QualityAt(0));
    }

    [Fact]
    public async Task A_station_that_moved_is_remarked_on_once()
    {
        await using Database database = await place.OpenAsync(Stop);
        var store = new WeatherStore(database);
        FetchedWeather here = Fetched(Days(2)) with { Position = (41.6, -93.3, 250) };
        FetchedWeather there = here with { Position = (41.8, -93.3, 260) };
        Assert.Empty((await store.KeepAsync([here], Kept.Morning, Stop)).Remarks);
        Assert.Contains("41.800", Assert.Single((await store.KeepAsync([there], Kept.Morning.AddDays(1), Stop)).Remarks).Words, StringComparison.Ordinal);
        Assert.Empty((await store.KeepAsync([there], Kept.Morning.AddDays(2), Stop)).Remarks);
    }

    [Fact]
    public async Task What_is_at_hand_is_what_is_read_again_from_the_database()
    {
        await using Database database = await place.OpenAsync(Stop);
        var store = new WeatherStore(database);
        await store.LoadAsync(Stop);
        await store.KeepAsync([Fetched(Days(10)), Fetched(Days(4)) with { Site = "green" }], Kept.Morning, Stop);
        await store.KeepAsync([Fetched(Days(12, (day, c) => day == First.AddDays(4) ? c + 2 : day == First.AddDays(7) ? double.NaN : c))], Kept.Morning.AddDays(1), Stop);
        var forecast = new Forecast(First.AddDays(2), Kept.Morning.AddDays(2).ToOffset(TimeSpan.FromHours(-5)), Days(7, (day, c) => day == First.AddDays(6) ? double.NaN : c));
        foreach (int hours in (int[])[0, 3, 3]) await store.KeepAsync([Fetched(null) with { Forecast = forecast with { IssuedAt = forecast.IssuedAt.AddHours(-hours) } }], forecast.IssuedAt, Stop);
        Assert.Equal(await TextAsync(new WeatherStore(database)), await TextAsync(store));
    }

    [Fact]
    public async Task What_another_program_keeps_or_takes_out_is_seen()
    {
        await using Database database = await place.OpenAsync(Stop);
        var store = new WeatherStore(database);
        var other = new WeatherStore(database);
        await store.KeepAsync([Fetched(Days(5))], Kept.Morning, Stop);
        await other.KeepAsync([Fetched(Days(8))], Kept.Morning.AddDays(1), Stop);
        Assert.Equal(8, (await store.LoadAsync(Stop)).Days[("lawn", "a service")].Count);
        Assert.Equal(0, (await store.KeepAsync([Fetched(Days(8))], Kept.Morning.AddDays(2), Stop)).Added);
        await other.KeepAsync([Fetched(Days(9, (_, c) => c + 1))], Kept.Morning.AddDays(3), Stop);
        WeatherChanges changes = await store.KeepAsync([Fetched(Days(9, (_, c) => c + 1))], Kept.Morning.AddDays(4), Stop);
        Assert.Equal((0, 0), (changes.Added, changes.Changed.Count));
        Assert.Equal(Mark.Corrected, (await store.LoadAsync(Stop)).Days[("lawn", "a service")].QualityAt(3));
        await new Pruning(database).RunAsync(First.AddYears(1), First.AddYears(4), Stop);
        Assert.Equal(Mark.Measured, (await store.LoadAsync(Stop)).Days[("lawn", "a service")].QualityAt(3));
    }

    private static async Task<string> TextAsync(WeatherStore store)
    {
        KeptWeather kept = await store.LoadAsync(Stop);
        IEnumerable<string> days = kept.Days.OrderBy(each => each.Key).Select(each => $"{each.Key} {Text(each.Value)}");
        IEnumerable<string> forecasts = kept.Forecasts.OrderBy(each => each.Key).SelectMany(each => each.Value.Select(forecast => $"{each.Key} {forecast.IssuedOn:O} {forecast.IssuedAt:O} {Text(forecast.Days)}"));
        return string.Join('\n', days.Concat(forecasts));
    }

    private static string Text(DailySeries series) => $"{series.FirstDay:O} {series.Count} " + string.Join(' ', Enum.GetValues<WeatherVariable>().SelectMany(
        variable => Enumerable.Range(0, series.Has(variable) ? series.Count : 0).Select(i => FormattableString.Invariant($"{variable} {series.Column(variable)[i]:R} {(double.IsNaN(series.Column(variable)[i]) ? null : series.MarkAt(variable, i))}"))));

    private static FetchedWeather Fetched(DailySeries? observed) => new("lawn", "a service", observed, null, null);

    private static DailySeries Days(int count, Func<DateOnly, double, double>? change = null)
    {
        var builder = new DailySeriesBuilder();
        for (int i = 0; i < count; i++)
        {
            DateOnly day = First.AddDays(i);
            builder.Put(day, WeatherVariable.MinimumAirC, change?.Invoke(day, 4 + i * 0.1) ?? 4 + i * 0.1);
            builder.Put(day, WeatherVariable.MaximumAirC, change?.Invoke(day, 15.3 + i * 0.1) ?? 15.3 + i * 0.1);
        }

        return builder.Build()!;
    }
}

public sealed class SqliteWeatherStoreTests() : WeatherStoreTests(DatabaseKind.File);

public sealed class PostgresWeatherStoreTests() : WeatherStoreTests(DatabaseKind.Server);
