using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Weather;
using GddWatch.Storage;
using GddWatch.Storage.Upkeep;
using Xunit;

namespace GddWatch.Tests.Storage;

public abstract class PruningTests(DatabaseKind kind) : IAsyncDisposable
{
    private static readonly DateOnly Today = new(2031, 6, 1);

    private static readonly DateOnly Before = Today.AddYears(-2);

    private readonly TestDatabase place = new(kind);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask DisposeAsync()
    {
        await place.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    [Fact]
    public async Task What_is_settled_and_old_goes_with_its_notices_and_what_waits_or_is_younger_stays()
    {
        await using Database database = await place.OpenAsync(Stop);
        foreach ((int year, bool isDelivered) in new[] { (2026, true), (2027, false), (2029, true) })
        {
            DateTimeOffset at = new(year, 6, 1, 6, 0, 0, TimeSpan.Zero);
            await new PassStore(database).CommitAsync(Kept.Pass(Kept.Message($"<{year}@x>", "a@example.org", Kept.Key(season: year))) with { At = at, Windows = [Kept.Window(season: year)] }, Stop);
            if (isDelivered) await new Outbox(database).RecordDeliveredAsync((await new Outbox(database).ClaimDueAsync(at, TimeSpan.FromMinutes(1), 10, Stop)).Single(each => each.Message.MessageId == $"<{year}@x>"), "250", at, Stop);
        }

        await new JournalStore(database).RecordAsync([new Mowing { SiteId = "a", On = new DateOnly(2020, 5, 1) }], null, Kept.Morning, Stop);
        string before = await KeptState.OfAsync(database, Stop);

        Pruned tried = await new Pruning(database).TryAsync(Before, Today, Stop);

        Assert.Equal(new Pruned(1, 1, 0, 0), tried);
        Assert.Equal(before, await KeptState.OfAsync(database, Stop));
        Assert.Equal(tried, await new Pruning(database).RunAsync(Before, Today, Stop));
        Assert.Equal(["<2027@x>", "<2029@x>"], (await new ToldStore(database).LoadAsync(Stop)).All.Select(told => told.MessageId));
        Assert.Equal(1, (await new Outbox(database).CountAsync(Stop)).Delivered);
        Assert.Equal("<2027@x>", Assert.Single(await new Outbox(database).LoadUndeliveredAsync(Stop)).MessageId);
        Assert.Single(await new JournalStore(database).LoadHistoryAsync(Stop));
        Assert.Equal(3, (await new WindowStore(database).LoadAsync(Stop)).Count);
        Assert.DoesNotContain((await new Inspection(database).RunAsync(new DateTimeOffset(Today.ToDateTime(default), TimeSpan.Zero), Stop)).Findings, finding => !finding.StartsWith("The server is set", StringComparison.Ordinal));
        Assert.Equal(new Pruned(0, 0, 0, 0), await new Pruning(database).RunAsync(Before, Today, Stop));
    }

    [Fact]
    public async Task A_hole_that_a_forecast_filled_is_filled_by_the_same_one_afterwards()
    {
        await using Database database = await place.OpenAsync(Stop);
        var store = new WeatherStore(database);
        DateOnly first = new(2026, 4, 1);
        // Each day's forecast for that day and the five after it, each its own; the days themselves come with a hole of four.
        for (int i = 0; i < 20; i++)
        {
            DateTimeOffset at = new(first.AddDays(i).ToDateTime(new TimeOnly(12, 0)), TimeSpan.Zero);
            await store.KeepAsync([Fetched(null) with { Forecast = new Forecast(first.AddDays(i), at, Days(first.AddDays(i), 6, (day, which) => which + day.Day * 0.1 + i * 0.01)) }], at, Stop);
        }

        DailySeries observed = Days(first, 25, (day, which) => day.Day is >= 9 and <= 12 ? null : which + day.Day * 0.1);
        await store.KeepAsync([Fetched(observed)], Kept.Morning.AddDays(20), Stop);
        await store.KeepAsync([Fetched(Days(first, 25, (day, which) => day.Day is >= 9 and <= 12 ? null : which + day.Day * 0.1 + (day.Day == 3 ? 1 : 0)))], Kept.Morning.AddDays(21), Stop);
        WeatherHistory before = await HistoryAsync(store);

        Pruned pruned = await new Pruning(database).RunAsync(Before, Today, Stop);

        // Of 20 forecasts of 6 days and 2 values, the last word on each of 25 days and 2 values stays.
        Assert.Equal((20 * 6 * 2 - 25 * 2, 2), (pruned.ForecastValues, pruned.ReplacedValues));
        WeatherHistory after = await HistoryAsync(store);
        for (DateOnly day = first; day <= observed.LastDay; day = day.AddDays(1))
        {
            KnownWeather then = before.AsOf(day)!, now = after.AsOf(day)!;
            Assert.Equal(then.Series.MinimumAirC, now.Series.MinimumAirC);
            Assert.Equal(then.Series.MaximumAirC, now.Series.MaximumAirC);
            Assert.Equal(then.Fillings, now.Fillings);
        }

        Assert.NotEmpty(after.AsOf(observed.LastDay)!.Fillings);
    }

    [Fact]
    public async Task What_is_younger_than_two_years_is_never_taken_out()
    {
        await using Database database = await place.OpenAsync(Stop);

        await Assert.ThrowsAsync<ArgumentOutOfRangeException>(() => new Pruning(database).RunAsync(Before.AddDays(1), Today, Stop));
    }

    private static async Task<WeatherHistory> HistoryAsync(WeatherStore store)
    {
        KeptWeather kept = await store.LoadAsync(Stop);
        return WeatherHistory.Of(kept.Days[("lawn", "a service")], [], [], kept.ForecastsOf("lawn", "a service"));
    }

    private static FetchedWeather Fetched(DailySeries? observed) => new("lawn", "a service", observed, null, null);

    private static DailySeries Days(DateOnly first, int count, Func<DateOnly, double, double?> value)
    {
        var builder = new DailySeriesBuilder();
        for (int i = 0; i < count; i++)
        {
            DateOnly day = first.AddDays(i);
            if (value(day, 4) is { } minimum) builder.Put(day, WeatherVariable.MinimumAirC, minimum);
            if (value(day, 15) is { } maximum) builder.Put(day, WeatherVariable.MaximumAirC, maximum);
        }

        return builder.Build()!;
    }
}

public sealed class SqlitePruningTests() : PruningTests(DatabaseKind.File);

public sealed class PostgresPruningTests() : PruningTests(DatabaseKind.Server);
