using GddWatch.Storage;
using Xunit;

namespace GddWatch.Tests.Storage;

public abstract class OutboxTests(DatabaseKind kind) : IAsyncLifetime
{
    private static readonly TimeSpan Hold = TimeSpan.FromMinutes(5);

    private readonly TestDatabase place = new(kind);
    private Database database = null!;
    private Outbox outbox = null!;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        database = await place.OpenAsync(Stop);
        outbox = new Outbox(database);
    }

    public async ValueTask DisposeAsync()
    {
        await database.DisposeAsync();
        await place.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    [Fact]
    public async Task Messages_come_in_the_order_in_which_they_were_queued_and_no_more_than_asked_for()
    {
        await QueueAsync(5);

        IReadOnlyList<ClaimedMessage> first = await outbox.ClaimDueAsync(Kept.Morning, Hold, 2, Stop);
        IReadOnlyList<ClaimedMessage> rest = await outbox.ClaimDueAsync(Kept.Morning, Hold, 10, Stop);

        Assert.Equal(["<0@x>", "<1@x>"], Ids(first));
        Assert.Equal(["<2@x>", "<3@x>", "<4@x>"], Ids(rest));
        Assert.All(first, claimed => Assert.Equal((1, Kept.Morning + Hold), (claimed.Attempt, claimed.ClaimedUntil)));
        Assert.Equivalent(Kept.Message("<0@x>", "r0@example.org", Kept.Key()), first[0].Message, strict: true);
    }

    [Fact]
    public async Task A_message_waits_for_its_instant()
    {
        await new PassStore(database).CommitAsync(
            Kept.Pass() with { Messages = [new QueuedMessage(Kept.Message("<1@x>", "a@example.org", Kept.Key()), Kept.Morning.AddHours(8))] }, Stop);

        Assert.Empty(await outbox.ClaimDueAsync(Kept.Morning.AddHours(8).AddTicks(-1), Hold, 10, Stop));
        // The same instant told by another zone's clock.
        Assert.Single(await outbox.ClaimDueAsync(Kept.Morning.AddHours(8).ToOffset(TimeSpan.FromHours(-5)), Hold, 10, Stop));
    }

    [Fact]
    public async Task A_claim_holds_until_it_runs_out_and_then_the_message_returns_as_the_next_attempt()
    {
        await QueueAsync(1);
        await outbox.ClaimDueAsync(Kept.Morning, Hold, 10, Stop);

        Assert.Empty(await outbox.ClaimDueAsync(Kept.Morning + Hold - TimeSpan.FromTicks(1), Hold, 10, Stop));
        Assert.Equal(2, Assert.Single(await outbox.ClaimDueAsync(Kept.Morning + Hold, Hold, 10, Stop)).Attempt);
    }

    [Fact]
    public async Task Claimers_side_by_side_over_several_connections_never_get_the_same_message_and_leave_none()
    {
        await QueueAsync(200);
        await using Database other = await place.OpenAsync(Stop);
        Outbox[] claimers = [outbox, new Outbox(other), outbox, new Outbox(other)];

        List<string>[] got = await Task.WhenAll(claimers.Select(claimer => Task.Run(
            async () =>
            {
                List<string> mine = [];
                while (mine.Count <= 200 && await claimer.ClaimDueAsync(Kept.Morning, Hold, 3, Stop) is { Count: > 0 } some)
                    mine.AddRange(Ids(some));
                return mine;
            },
            Stop)));

        string[] all = [.. got.SelectMany(mine => mine)];
        Assert.Equal(200, all.Length);
        Assert.Equal(200, all.Distinct().Count());
    }

    [Fact]
    public async Task A_delivered_message_never_returns()
    {
        await QueueAsync(1);
        ClaimedMessage claimed = await ClaimOneAsync(Kept.Morning);

        Assert.True(await outbox.RecordDeliveredAsync(claimed, "var/mail/1.eml", Kept.Morning, Stop));

        Assert.Empty(await outbox.ClaimDueAsync(Kept.Morning.AddYears(5), Hold, 10, Stop));
        Assert.False(await outbox.RecordDeliveredAsync(claimed, "again", Kept.Morning, Stop));
        Assert.False(await outbox.RecordRefusedForNowAsync(claimed, "busy", Kept.Morning, Stop));
        Assert.False(await outbox.ReleaseAsync(claimed, Stop));
        Assert.Empty(await outbox.ClaimDueAsync(Kept.Morning.AddYears(5), Hold, 10, Stop));
        Assert.Equal(new OutboxCounts(0, 1, 0, null), await outbox.CountAsync(Stop));
        Assert.Empty(await outbox.LoadUndeliveredAsync(Stop));
    }

    [Theory]
    [InlineData(false, "refused-for-now")]
    [InlineData(true, "unknown")]
    public async Task Refused_for_now_and_unknown_wait_for_the_next_attempt_with_the_words_kept(bool unknown, string outcome)
    {
        await QueueAsync(1);
        ClaimedMessage claimed = await ClaimOneAsync(Kept.Morning);
        DateTimeOffset next = Kept.Morning.AddMinutes(2);

        Assert.True(unknown
            ? await outbox.RecordUnknownAsync(claimed, "451 4.3.0 try later", next, Stop)
            : await outbox.RecordRefusedForNowAsync(claimed, "451 4.3.0 try later", next, Stop));

        Assert.Equal(
            new UndeliveredMessage("<0@x>", "r0@example.org", Kept.Day, Kept.Morning, 1, next, outcome, "451 4.3.0 try later"),
            Assert.Single(await outbox.LoadUndeliveredAsync(Stop)));
        Assert.Equal(new OutboxCounts(1, 0, 0, Kept.Morning), await outbox.CountAsync(Stop));
        Assert.Empty(await outbox.ClaimDueAsync(next.AddTicks(-1), Hold, 10, Stop));
        Assert.Equal(2, (await ClaimOneAsync(next)).Attempt);
    }

    [Fact]
    public async Task Refused_for_good_is_never_tried_again_and_stays_in_sight()
    {
        await QueueAsync(2);
        ClaimedMessage claimed = await ClaimOneAsync(Kept.Morning);

        Assert.True(await outbox.RecordRefusedForGoodAsync(claimed, "550 5.1.1 no such person", Kept.Morning, Stop));

        Assert.Equal(["<1@x>"], Ids(await outbox.ClaimDueAsync(Kept.Morning.AddYears(1), Hold, 10, Stop)));
        Assert.Equal(new OutboxCounts(1, 0, 1, Kept.Morning), await outbox.CountAsync(Stop));
        Assert.Equal(
            [("<0@x>", "refused-for-good", "550 5.1.1 no such person", null), ("<1@x>", null, null, Kept.Morning)],
            (await outbox.LoadUndeliveredAsync(Stop)).Select(one => (one.MessageId, one.LastOutcome, one.LastWords, one.NextAttempt)));
    }

    [Fact]
    public async Task A_released_message_is_due_at_once_and_the_attempt_is_not_counted()
    {
        await QueueAsync(1);

        Assert.True(await outbox.ReleaseAsync(await ClaimOneAsync(Kept.Morning), Stop));

        Assert.Equal(1, (await ClaimOneAsync(Kept.Morning)).Attempt);
    }

    [Fact]
    public async Task A_worker_whose_claim_ran_out_cannot_free_what_another_has_in_hand()
    {
        await QueueAsync(1);
        ClaimedMessage slow = await ClaimOneAsync(Kept.Morning);
        ClaimedMessage second = await ClaimOneAsync(Kept.Morning + Hold);

        Assert.False(await outbox.RecordRefusedForNowAsync(slow, "slow", Kept.Morning, Stop));
        Assert.False(await outbox.RecordUnknownAsync(slow, "slow", Kept.Morning, Stop));
        Assert.False(await outbox.RecordRefusedForGoodAsync(slow, "slow", Kept.Morning, Stop));
        Assert.False(await outbox.ReleaseAsync(slow, Stop));

        Assert.Empty(await outbox.ClaimDueAsync(Kept.Morning + Hold, Hold, 10, Stop));
        Assert.True(await outbox.RecordRefusedForNowAsync(second, "second", Kept.Morning, Stop));
    }

    [Fact]
    public async Task That_a_message_was_delivered_is_taken_even_from_a_worker_whose_claim_ran_out()
    {
        await QueueAsync(1);
        ClaimedMessage slow = await ClaimOneAsync(Kept.Morning);
        ClaimedMessage second = await ClaimOneAsync(Kept.Morning + Hold);

        Assert.True(await outbox.RecordDeliveredAsync(slow, "a.eml", Kept.Morning + Hold, Stop));

        Assert.False(await outbox.RecordRefusedForNowAsync(second, "busy", Kept.Morning, Stop));
        Assert.Equal(new OutboxCounts(0, 1, 0, null), await outbox.CountAsync(Stop));
    }

    [Fact]
    public async Task A_message_that_cannot_be_read_is_set_aside_and_the_others_go_on()
    {
        await QueueAsync(3);
        Assert.Equal(1, await place.RunAsync("update message set body = '{\"messageId\":' where message_id = '<1@x>'", Stop));

        Assert.Equal(["<0@x>", "<2@x>"], Ids(await outbox.ClaimDueAsync(Kept.Morning, Hold, 10, Stop)));

        UndeliveredMessage aside = (await outbox.LoadUndeliveredAsync(Stop)).Single(one => one.LastOutcome is not null);
        Assert.Equal(("<1@x>", "refused-for-good"), (aside.MessageId, aside.LastOutcome));
        Assert.StartsWith("What is kept of this message cannot be read", aside.LastWords, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_empty_queue_is_counted_as_empty() => Assert.Equal(new OutboxCounts(0, 0, 0, null), await outbox.CountAsync(Stop));

    [Theory]
    [InlineData(0, 1)]
    [InlineData(-1, 1)]
    [InlineData(60, 0)]
    public async Task A_claim_of_nothing_or_for_no_time_is_a_mistake(int seconds, int most) =>
        await Assert.ThrowsAsync<ArgumentOutOfRangeException>(() => outbox.ClaimDueAsync(Kept.Morning, TimeSpan.FromSeconds(seconds), most, Stop));

    private static IEnumerable<string> Ids(IEnumerable<ClaimedMessage> claimed) => claimed.Select(one => one.Message.MessageId);

    private async Task<ClaimedMessage> ClaimOneAsync(DateTimeOffset now) => Assert.Single(await outbox.ClaimDueAsync(now, Hold, 1, Stop));

    private Task<int> QueueAsync(int count) => new PassStore(database).CommitAsync(
        Kept.Pass([.. Enumerable.Range(0, count).Select(i => Kept.Message($"<{i}@x>", $"r{i}@example.org", Kept.Key()))]), Stop);
}

public sealed class SqliteOutboxTests() : OutboxTests(DatabaseKind.File);

public sealed class PostgresOutboxTests() : OutboxTests(DatabaseKind.Server);
