using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Windows;
using GddWatch.Storage;
using Xunit;

namespace GddWatch.Tests.Storage;

public abstract class PassStoreTests(DatabaseKind kind) : IAsyncDisposable
{
    private readonly TestDatabase place = new(kind);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask DisposeAsync()
    {
        await place.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    [Fact]
    public async Task The_same_pass_committed_again_queues_nothing_and_changes_nothing()
    {
        await using Database database = await place.OpenAsync(Stop);
        PassStore passes = new(database);
        PassResult pass = Kept.Pass(Kept.Message("<1@x>", "a@example.org", Kept.Key()), Kept.Message("<2@x>", "operator@example.org"));
        Assert.Equal(2, await passes.CommitAsync(pass, Stop));
        string before = await KeptState.OfAsync(database, Stop);

        Assert.Equal(0, await passes.CommitAsync(pass with { At = Kept.Morning.AddHours(3) }, Stop));

        Assert.Equal(before, await KeptState.OfAsync(database, Stop));
    }

    [Fact]
    public async Task A_message_that_was_delivered_is_not_queued_again_by_the_same_pass()
    {
        await using Database database = await place.OpenAsync(Stop);
        PassStore passes = new(database);
        Outbox outbox = new(database);
        PassResult pass = Kept.Pass(Kept.Message("<1@x>", "a@example.org", Kept.Key()));
        await passes.CommitAsync(pass, Stop);
        ClaimedMessage claimed = Assert.Single(await outbox.ClaimDueAsync(Kept.Morning, TimeSpan.FromMinutes(5), 10, Stop));
        await outbox.RecordDeliveredAsync(claimed, "a.eml", Kept.Morning, Stop);

        await passes.CommitAsync(pass, Stop);

        Assert.Empty(await outbox.ClaimDueAsync(Kept.Morning.AddYears(1), TimeSpan.FromMinutes(5), 10, Stop));
    }

    [Fact]
    public async Task A_notice_told_before_under_another_message_stops_the_pass_and_nothing_of_it_is_kept()
    {
        await using Database database = await place.OpenAsync(Stop);
        PassStore passes = new(database);
        await passes.CommitAsync(Kept.Pass(Kept.Message("<1@x>", "a@example.org", Kept.Key())), Stop);
        string before = await KeptState.OfAsync(database, Stop);
        PassResult clash = Kept.Pass(
            Kept.Message("<2@x>", "b@example.org", Kept.Key()),
            Kept.Message("<3@x>", "A@Example.org", Kept.Key("grub-preventive"), Kept.Key()),
            Kept.Message("<4@x>", "c@example.org", Kept.Key())) with
        {
            Day = Kept.Day.AddDays(1),
            Windows = [Kept.Window(state: WindowState.Closed), Kept.Window(treatment: "grub-preventive")],
            RegionValues = new Dictionary<string, string> { ["configuration"] = "c9" },
        };

        StorageException fault = await Assert.ThrowsAsync<StorageException>(() => passes.CommitAsync(clash, Stop));

        Assert.Equal(
            "The notice north-common/overseeding/2026/opened was already told to A@Example.org by the message <1@x> and is not told again by <3@x>. "
            + "Nothing of this pass was kept.",
            fault.Message);
        Assert.Equal(before, await KeptState.OfAsync(database, Stop));
    }

    [Fact]
    public async Task Two_messages_of_one_pass_that_tell_one_person_the_same_stop_it()
    {
        await using Database database = await place.OpenAsync(Stop);
        string before = await KeptState.OfAsync(database, Stop);

        await Assert.ThrowsAsync<StorageException>(() => new PassStore(database).CommitAsync(
            Kept.Pass(Kept.Message("<1@x>", "a@example.org", Kept.Key()), Kept.Message("<2@x>", "a@example.org", Kept.Key())), Stop));

        Assert.Equal(before, await KeptState.OfAsync(database, Stop));
    }

    [Fact]
    public async Task A_message_that_comes_again_with_another_notice_stops_the_pass_rather_than_counting_as_told()
    {
        await using Database database = await place.OpenAsync(Stop);
        PassStore passes = new(database);
        await passes.CommitAsync(Kept.Pass(Kept.Message("<1@x>", "a@example.org", Kept.Key())), Stop);

        StorageException fault = await Assert.ThrowsAsync<StorageException>(
            () => passes.CommitAsync(Kept.Pass(Kept.Message("<1@x>", "a@example.org", Kept.Key(), Kept.Key("grub-preventive"))), Stop));

        Assert.Contains("already kept without the notice north-common/grub-preventive/2026/opened", fault.Message, StringComparison.Ordinal);
        Assert.Null((await new ToldStore(database).LoadAsync(Stop)).Last(Kept.Key("grub-preventive"), "a@example.org"));
    }

    [Fact]
    public async Task A_fault_in_the_very_last_statement_undoes_all_before_it()
    {
        await using Database database = await place.OpenAsync(Stop);
        string before = await KeptState.OfAsync(database, Stop);

        await Assert.ThrowsAsync<StorageException>(() => new PassStore(database).CommitAsync(
            Kept.Pass(Kept.Message("<1@x>", "a@example.org", Kept.Key())) with { RegionValues = new Dictionary<string, string> { ["x"] = null! } }, Stop));

        Assert.Equal(before, await KeptState.OfAsync(database, Stop));
    }

    [Fact]
    public async Task What_was_told_is_found_by_notice_and_person_whatever_the_capitals_of_the_address()
    {
        await using Database database = await place.OpenAsync(Stop);
        await new PassStore(database).CommitAsync(
            Kept.Pass(Kept.Message("<1@x>", "Adviser@Example.org", Kept.Key(), Kept.Key(kind: NoticeKind.HeadsUp))), Stop);

        ToldNotices told = await new ToldStore(database).LoadAsync(Stop);

        Assert.Equal(Kept.Day, told.Last(Kept.Key(), "adviser@example.org")?.Day);
        Assert.Equal(Kept.Day, told.Last(Kept.Key(kind: NoticeKind.HeadsUp), "ADVISER@EXAMPLE.ORG")?.Day);
        Assert.Null(told.Last(Kept.Key(kind: NoticeKind.Closed), "adviser@example.org"));
        Assert.Null(told.Last(Kept.Key(season: 2025), "adviser@example.org"));
        Assert.Null(told.Last(Kept.Key(site: "mill-green"), "adviser@example.org"));
        Assert.Null(told.Last(Kept.Key(), "other@example.org"));
    }

    [Fact]
    public async Task Values_of_the_region_are_replaced_and_those_never_kept_are_absent()
    {
        await using Database database = await place.OpenAsync(Stop);
        RegionValues values = new(database);
        await values.KeepAsync("configuration", "c1", Stop);
        await new PassStore(database).CommitAsync(
            Kept.Pass() with { RegionValues = new Dictionary<string, string> { ["configuration"] = "c2", ["scenario"] = "2025" } }, Stop);

        Assert.Equal("c2", await values.FindAsync("configuration", Stop));
        Assert.Equal("2025", await values.FindAsync("scenario", Stop));
        Assert.Null(await values.FindAsync("never", Stop));
    }

    [Fact]
    public async Task Stopping_before_the_commit_keeps_nothing()
    {
        await using Database database = await place.OpenAsync(Stop);
        string before = await KeptState.OfAsync(database, Stop);
        using CancellationTokenSource source = new();
        StoppingList windows = new(source, [Kept.Window(), Kept.Window(season: 2025)]);

        await Assert.ThrowsAnyAsync<OperationCanceledException>(
            () => new PassStore(database).CommitAsync(Kept.Pass() with { Windows = windows }, source.Token));

        Assert.Equal(before, await KeptState.OfAsync(database, Stop));
    }

    /// <summary>Asks the work to stop when its second window is taken for the second time or a later one: the first time is the check, the others the writing, which is tried again where a server was busy.</summary>
    private sealed class StoppingList(CancellationTokenSource source, List<KeptWindow> windows) : IReadOnlyList<KeptWindow>
    {
        private int rounds;

        public int Count => windows.Count;

        public KeptWindow this[int index] => windows[index];

        public IEnumerator<KeptWindow> GetEnumerator()
        {
            rounds++;
            for (int i = 0; i < windows.Count; i++)
            {
                if (rounds >= 2 && i == 1)
                    source.Cancel();
                yield return windows[i];
            }
        }

        System.Collections.IEnumerator System.Collections.IEnumerable.GetEnumerator() => GetEnumerator();
    }
}

public sealed class SqlitePassStoreTests() : PassStoreTests(DatabaseKind.File);

public sealed class PostgresPassStoreTests() : PassStoreTests(DatabaseKind.Server);
