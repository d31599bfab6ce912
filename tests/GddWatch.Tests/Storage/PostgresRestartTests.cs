using GddWatch.Storage;
using GddWatch.Storage.Dialects;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace GddWatch.Tests.Storage;

/// <summary>A server that goes down and comes back while it is worked with. It is a server of this class's own, so that the other tests keep theirs.</summary>
public sealed class PostgresRestartTests : IAsyncLifetime
{
    private static readonly TimeSpan Hold = TimeSpan.FromMinutes(5);

    private readonly PostgresCluster cluster = new();
    private readonly List<string> said = [];
    private Database database = null!;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        await cluster.RequireAsync();
        database = await OpenAsync(await cluster.NewAsync());
    }

    public async ValueTask DisposeAsync()
    {
        if (database is not null) await database.DisposeAsync();
        await cluster.DisposeAsync();
    }

    [Fact]
    public async Task Killed_in_the_middle_of_a_pass_and_between_two_steps_of_a_delivery_it_ends_as_an_undisturbed_one()
    {
        await using var file = new TestDatabase(DatabaseKind.File);
        await using Database undisturbed = await file.OpenAsync(Stop);
        string expected = await LiveAsync(undisturbed, () => { });

        string actual = await LiveAsync(database, () => cluster.CrashAsync().GetAwaiter().GetResult());

        Assert.Equal(expected, actual);
        // Once in the pass, once before the claim, once before the record; and it was said each time.
        Assert.Equal(3, said.Count(words => words.StartsWith($"The database '{database.Where}' does not answer (", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task A_server_that_stays_away_is_told_in_words_and_what_was_kept_is_there_when_it_is_back()
    {
        await new PassStore(database).CommitAsync(Kept.Pass(Kept.Message("<1@x>", "a@example.org", Kept.Key())), Stop);
        await cluster.CrashAsync();
        comesBack = false;

        StorageException fault = await Assert.ThrowsAsync<StorageException>(() => new Outbox(database).CountAsync(Stop));

        Assert.True(fault.MayPass);
        Assert.StartsWith($"The database '{database.Where}' does not answer (", fault.Message, StringComparison.Ordinal);
        Assert.EndsWith("what was kept before is safe.", fault.Message, StringComparison.Ordinal);
        await cluster.StartAsync();
        Assert.Equal(1, (await new Outbox(database).CountAsync(Stop)).Queued);
    }

    [Fact]
    public async Task The_seat_of_the_judge_is_free_after_a_crash_of_the_server_and_whoever_asks_first_has_it()
    {
        await using var first = new JudgingSeat(database);
        await using var second = new JudgingSeat(database);
        Assert.True(await first.TakeAsync(Stop));
        Assert.False(await second.TakeAsync(Stop));
        await cluster.CrashAsync();

        Assert.True(await second.TakeAsync(Stop));
        Assert.False(await first.TakeAsync(Stop));
    }

    private bool comesBack = true;

    private Task<Database> OpenAsync(DatabasePlace.OnServer place) => Database.OpenAsync(
        place, new FakeTimeProvider(Kept.Morning), SchemaChange.OfPostgreSql(), new Patience(4, TimeSpan.Zero, TimeSpan.Zero), Say, Stop);

    /// <summary>Hears that the server does not answer, and starts it: the pause before the next attempt is as long as that takes.</summary>
    private void Say(string words)
    {
        said.Add(words);
        if (comesBack) cluster.StartAsync().GetAwaiter().GetResult();
    }

    /// <summary>A pass and the delivery of its messages, with a blow in the middle of the first and between the steps of the second.</summary>
    private static async Task<string> LiveAsync(Database database, Action blow)
    {
        var passes = new PassStore(database);
        var outbox = new Outbox(database);
        await passes.CommitAsync(Kept.Pass(Kept.Message("<1@x>", "a@example.org", Kept.Key(season: 2025))), Stop);
        PassResult second = Kept.Pass(Kept.Message("<2@x>", "a@example.org", Kept.Key()), Kept.Message("<3@x>", "b@example.org", Kept.Key())) with
        {
            Windows = new BlowWhileWriting([Kept.Window(), Kept.Window(season: 2025), Kept.Window(season: 2024)], blow),
            RegionValues = new Dictionary<string, string> { ["configuration"] = "c2" },
        };
        Assert.Equal(2, await passes.CommitAsync(second, Stop));
        blow();
        IReadOnlyList<ClaimedMessage> claimed = await outbox.ClaimDueAsync(Kept.Morning, Hold, 10, Stop);
        Assert.Equal(["<1@x>", "<2@x>", "<3@x>"], claimed.Select(each => each.Message.MessageId));
        Assert.All(claimed, each => Assert.Equal(1, each.Attempt));
        Assert.True(await outbox.RecordDeliveredAsync(claimed[0], "250 accepted", Kept.Morning, Stop));
        blow();
        Assert.True(await outbox.RecordDeliveredAsync(claimed[1], "250 accepted", Kept.Morning, Stop));
        Assert.True(await outbox.RecordRefusedForNowAsync(claimed[2], "451 busy", Kept.Morning.AddHours(1), Stop));
        Assert.Empty(await outbox.ClaimDueAsync(Kept.Morning, Hold, 10, Stop));
        return await KeptState.OfAsync(database, Stop);
    }

    /// <summary>Strikes once, when its second window is taken for the second time: the first time is the check, the second the writing.</summary>
    private sealed class BlowWhileWriting(List<KeptWindow> windows, Action blow) : IReadOnlyList<KeptWindow>
    {
        private int rounds;

        public int Count => windows.Count;

        public KeptWindow this[int index] => windows[index];

        public IEnumerator<KeptWindow> GetEnumerator()
        {
            rounds++;
            for (int i = 0; i < windows.Count; i++)
            {
                if (rounds == 2 && i == 1) blow();
                yield return windows[i];
            }
        }

        System.Collections.IEnumerator System.Collections.IEnumerable.GetEnumerator() => GetEnumerator();
    }
}
