using GddWatch.Agronomy.Windows;
using GddWatch.Storage;
using Xunit;

namespace GddWatch.Tests.Storage;

public abstract class WindowStoreTests(DatabaseKind kind) : IAsyncDisposable
{
    private readonly TestDatabase place = new(kind);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask DisposeAsync()
    {
        await place.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    [Fact]
    public async Task Every_state_and_every_day_of_a_window_comes_back_as_it_was_even_after_opening_anew()
    {
        KeptWindow[] windows =
        [
            .. Enum.GetValues<WindowState>().Select((state, i) => Kept.Window(season: 2020 + i, state: state)),
            Kept.Window(season: 2040) with
            {
                Opened = new DateOnly(2040, 2, 29),
                PastBest = new DateOnly(2040, 12, 31),
                ClosedOn = new DateOnly(2041, 1, 1),
                ConfigurationNote = "Opened on Monday, 6 August before the change.",
                Reason = "Überdüngung, 'quoted'; \"so\" -- not a comment\nsecond line",
            },
        ];
        await using (Database first = await place.OpenAsync(Stop))
            await new PassStore(first).CommitAsync(Kept.Pass() with { Windows = windows }, Stop);

        await using Database second = await place.OpenAsync(Stop);

        Assert.Equal(windows, await new WindowStore(second).LoadAsync(Stop));
    }

    [Fact]
    public async Task A_later_pass_replaces_the_window_of_the_same_season_and_keeps_the_others()
    {
        await using Database database = await place.OpenAsync(Stop);
        PassStore passes = new(database);
        KeptWindow last = Kept.Window(season: 2025, state: WindowState.Closed) with { ClosedOn = new DateOnly(2025, 10, 3) };
        KeptWindow before = Kept.Window(state: WindowState.Open) with { Opened = Kept.Day, PastBest = Kept.Day, ConfigurationNote = "n" };
        KeptWindow after = Kept.Window(state: WindowState.Unknown) with { JudgedOn = Kept.Day.AddDays(1), Configuration = "c2" };
        await passes.CommitAsync(Kept.Pass() with { Windows = [last, before] }, Stop);

        await passes.CommitAsync(Kept.Pass() with { Windows = [after], Day = Kept.Day.AddDays(1) }, Stop);

        Assert.Equal([last, after], await new WindowStore(database).LoadAsync("north-common", Stop));
        Assert.Empty(await new WindowStore(database).LoadAsync("nowhere", Stop));
        Assert.Equal(Kept.Day.AddDays(1), (await new WindowStore(database).LoadLastJudgedAsync(Stop))["north-common"]);
    }

    [Fact]
    public async Task A_site_without_windows_is_judged_all_the_same_and_other_sites_keep_their_day()
    {
        await using Database database = await place.OpenAsync(Stop);
        PassStore passes = new(database);
        await passes.CommitAsync(Kept.Pass() with { Sites = ["a", "b"], Windows = [] }, Stop);

        await passes.CommitAsync(Kept.Pass() with { Sites = ["b"], Windows = [], Day = Kept.Day.AddDays(3) }, Stop);

        IReadOnlyDictionary<string, DateOnly> judged = await new WindowStore(database).LoadLastJudgedAsync(Stop);
        Assert.Equal(2, judged.Count);
        Assert.Equal(Kept.Day, judged["a"]);
        Assert.Equal(Kept.Day.AddDays(3), judged["b"]);
    }

    [Fact]
    public async Task A_window_of_a_site_that_was_not_judged_is_refused()
    {
        await using Database database = await place.OpenAsync(Stop);

        ArgumentException fault = await Assert.ThrowsAsync<ArgumentException>(
            () => new PassStore(database).CommitAsync(Kept.Pass() with { Windows = [Kept.Window(site: "elsewhere")] }, Stop));

        Assert.Contains("elsewhere/overseeding/2026", fault.Message, StringComparison.Ordinal);
    }
}

public sealed class SqliteWindowStoreTests() : WindowStoreTests(DatabaseKind.File);

public sealed class PostgresWindowStoreTests() : WindowStoreTests(DatabaseKind.Server);
