using System.Text.Json;
using GddWatch.Agronomy.Changes;
using GddWatch.Storage.Sql;

namespace GddWatch.Storage;

/// <summary>
/// The queue of messages. A worker claims some for a while, delivers them and records what became of each; the claims of a worker that died run out and the
/// messages return. Recording returns false where the claim had run out and somebody else has the message, or it had been delivered before.
/// </summary>
public sealed class Outbox(Database database)
{
    /// <summary>Claims messages that are due and in nobody's hand, those queued first before others.</summary>
    /// <param name="now">The instant.</param>
    /// <param name="claimFor">How long the claim holds; longer than delivering them all can take.</param>
    /// <param name="most">How many at most.</param>
    /// <param name="stop">To be stopped by.</param>
    public Task<IReadOnlyList<ClaimedMessage>> ClaimDueAsync(DateTimeOffset now, TimeSpan claimFor, int most, CancellationToken stop)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(claimFor, TimeSpan.Zero);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(most);
        string owner = Guid.NewGuid().ToString("N");
        DateTimeOffset until = now + claimFor;
        return database.WriteRowsAsync(
            async work =>
            {
                await work.ExecuteAsync(database.LocksRows ? MessageSql.ClaimSkippingLocked : MessageSql.Claim, new { owner, until = StoredText.Of(until), now = StoredText.Of(now), most });
                List<ClaimedMessage> claimed = [];
                foreach (ClaimedRow row in await work.QueryAsync<ClaimedRow>(MessageSql.LoadClaimed, new { owner }))
                {
                    // One unreadable message must not hold up the others for ever: it is set aside, where the operator sees it.
                    if (TryRead(row.Body, out Message? message, out string fault))
                        claimed.Add(new ClaimedMessage(message, StoredText.Instant(row.QueuedAt), row.Attempts, until, owner) { FirstTriedAt = StoredText.Instant(row.FirstTriedAt ?? row.QueuedAt) });
                    else
                        await work.ExecuteAsync(MessageSql.RefusedForGood, new { messageId = row.MessageId, owner, words = fault, at = StoredText.Of(now) });
                }

                return (IReadOnlyList<ClaimedMessage>)claimed;
            },
            stop);
    }

    /// <summary>Gives back a message that was not tried, so that it need not wait for the claim to run out.</summary>
    public Task<bool> ReleaseAsync(ClaimedMessage claimed, CancellationToken stop) =>
        RecordAsync(MessageSql.Release, new { messageId = claimed.Message.MessageId, owner = claimed.Owner }, stop);

    /// <summary>Gives back a message that was not tried since its time has not come, such as the end of quiet hours.</summary>
    public Task<bool> PostponeAsync(ClaimedMessage claimed, DateTimeOffset notBefore, CancellationToken stop) =>
        RecordAsync(MessageSql.Postpone, new { messageId = claimed.Message.MessageId, owner = claimed.Owner, notBefore = StoredText.Of(notBefore) }, stop);

    /// <summary>Makes messages due again that wait, or are claimed, for longer than anything waits: the clock was ahead then and has been put right.</summary>
    /// <param name="now">The instant.</param>
    /// <param name="longestWait">Longer than any true wait.</param>
    /// <param name="stop">To be stopped by.</param>
    /// <returns>How many there were.</returns>
    public Task<int> EndImpossibleWaitsAsync(DateTimeOffset now, TimeSpan longestWait, CancellationToken stop) => database.WriteAsync(
        work => work.ExecuteAsync(MessageSql.EndImpossibleWaits, new { now = StoredText.Of(now), farthest = StoredText.Of(now + longestWait) }), stop);

    /// <summary>Records that a message was delivered. Taken even if the claim had run out: it is true whoever says it.</summary>
    /// <param name="claimed">The message.</param>
    /// <param name="where">Where it went: the file, or the server's words.</param>
    /// <param name="at">When.</param>
    /// <param name="stop">To be stopped by.</param>
    public Task<bool> RecordDeliveredAsync(ClaimedMessage claimed, string where, DateTimeOffset at, CancellationToken stop) => database.WriteRowsAsync(
        async work =>
        {
            bool isNews = await work.ExecuteAsync(MessageSql.Delivered, new { messageId = claimed.Message.MessageId, words = where, at = StoredText.Of(at) }) > 0;
            await work.ExecuteAsync(RefusingAddressSql.Forgive, new { address = StoredText.Address(claimed.Message.Address) });
            return isNews;
        },
        stop);

    /// <summary>Records that a message was refused for now, with the server's words, and when to try again.</summary>
    public Task<bool> RecordRefusedForNowAsync(ClaimedMessage claimed, string words, DateTimeOffset nextAttempt, CancellationToken stop) =>
        RecordTryAgainAsync(claimed, "refused-for-now", words, nextAttempt, stop);

    /// <summary>Records that nobody knows whether a message arrived, and when to try again: it may come twice rather than never, under the same Message-ID.</summary>
    public Task<bool> RecordUnknownAsync(ClaimedMessage claimed, string words, DateTimeOffset nextAttempt, CancellationToken stop) =>
        RecordTryAgainAsync(claimed, "unknown", words, nextAttempt, stop);

    /// <summary>Records that a message was refused for good, with the server's words.</summary>
    public Task<bool> RecordRefusedForGoodAsync(ClaimedMessage claimed, string words, DateTimeOffset at, CancellationToken stop) => RecordAsync(
        MessageSql.RefusedForGood, new { messageId = claimed.Message.MessageId, owner = claimed.Owner, words, at = StoredText.Of(at) }, stop);

    /// <summary>
    /// Records that the server refused a message for good for the sake of its address or of what is in it. After so many in a row the address is paused, and what else
    /// is queued for it is refused with the same words.
    /// </summary>
    /// <returns>Whether the address is paused by this.</returns>
    public Task<bool> RecordRefusedByAddressAsync(ClaimedMessage claimed, string words, int pauseAfter, DateTimeOffset at, CancellationToken stop) => database.WriteRowsAsync(
        async work =>
        {
            string address = StoredText.Address(claimed.Message.Address);
            string instant = StoredText.Of(at);
            if (await work.ExecuteAsync(MessageSql.RefusedForGood, new { messageId = claimed.Message.MessageId, owner = claimed.Owner, words, at = instant }) == 0) return false;
            await work.ExecuteAsync(RefusingAddressSql.Count, new { address, words, at = instant });
            bool isPaused = await work.ExecuteAsync(RefusingAddressSql.Pause, new { address, pauseAfter, at = instant }) > 0;
            if (isPaused) await work.ExecuteAsync(MessageSql.RefuseAllTo, new { address, words = $"Not sent, since the address is paused: {words}", at = instant });
            return isPaused;
        },
        stop);

    /// <summary>What has not reached its readers and is in nobody's hand, to be compared with what is known now.</summary>
    public Task<HeldUpMails> LoadHeldUpAsync(DateTimeOffset now, CancellationToken stop) => database.ReadAsync(
        async work =>
        {
            HeldUpRow[] facts = [.. await work.QueryAsync<HeldUpRow>(MessageSql.LoadHeldUpFacts, new { now = StoredText.Of(now) })];
            HeldUpRow[] others = [.. await work.QueryAsync<HeldUpRow>(MessageSql.LoadHeldUpOthers, new { now = StoredText.Of(now) })];
            IEnumerable<HeldUpNotice> notices = facts.GroupBy(row => (row.MessageId, row.Site, row.Treatment, row.Season))
                .Select(window => new HeldUpNotice(window.Key.MessageId, window.First().Address, StoredText.Day(window.First().Day), [.. window.Select(row => row.Fact())]));
            var bulletins = new List<Message>();
            foreach (HeldUpRow row in others)
            {
                if (TryRead(row.Body, out Message? message, out _) && message.Bulletin is not null) bulletins.Add(message);
            }

            return new HeldUpMails([.. notices], bulletins, facts.Concat(others).Where(row => row.State == "refused").Select(row => row.MessageId).ToHashSet(StringComparer.Ordinal));
        },
        stop);

    /// <summary>Messages by their Message-IDs, whatever became of them; one that cannot be read is left out.</summary>
    public Task<IReadOnlyList<Message>> LoadAsync(IReadOnlyCollection<string> messageIds, CancellationToken stop) => database.ReadAsync(
        async work =>
        {
            var messages = new List<Message>();
            foreach (string messageId in messageIds)
            {
                if (await work.FindAsync<string>(MessageSql.LoadBody, new { messageId }) is { } body && TryRead(body, out Message? message, out _)) messages.Add(message);
            }

            return (IReadOnlyList<Message>)messages;
        },
        stop);

    /// <summary>The queue in numbers.</summary>
    /// <param name="now">The instant.</param>
    /// <param name="stop">To be stopped by.</param>
    public Task<OutboxCounts> CountAsync(DateTimeOffset now, CancellationToken stop) => database.ReadAsync(
        async work =>
        {
            CountsRow row = await work.SingleAsync<CountsRow>(MessageSql.Count, new { now = StoredText.Of(now) });
            DateTimeOffset? oldest = row.OldestWaiting is { } instant ? StoredText.Instant(instant) : null;
            return new OutboxCounts(row.Queued, row.Delivered, row.Refused, oldest) { ForLater = row.ForLater };
        },
        stop);

    /// <summary>The queue in numbers, whatever its time.</summary>
    public Task<OutboxCounts> CountAsync(CancellationToken stop) => CountAsync(DateTimeOffset.MaxValue, stop);

    /// <summary>The messages that have not been delivered, those refused for good among them, the oldest first.</summary>
    public Task<IReadOnlyList<UndeliveredMessage>> LoadUndeliveredAsync(CancellationToken stop) => database.ReadAsync(
        async work =>
        {
            IEnumerable<UndeliveredRow> rows = await work.QueryAsync<UndeliveredRow>(MessageSql.LoadUndelivered);
            return (IReadOnlyList<UndeliveredMessage>)[.. rows.Select(row => row.Message())];
        },
        stop);

    private Task<bool> RecordTryAgainAsync(ClaimedMessage claimed, string outcome, string words, DateTimeOffset nextAttempt, CancellationToken stop) => RecordAsync(
        MessageSql.TryAgain,
        new { messageId = claimed.Message.MessageId, owner = claimed.Owner, outcome, words, nextAttempt = StoredText.Of(nextAttempt) },
        stop);

    private Task<bool> RecordAsync(string sql, object values, CancellationToken stop) => database.WriteRowsAsync(
        async work => await work.ExecuteAsync(sql, values) > 0, stop);

    private static bool TryRead(string body, [System.Diagnostics.CodeAnalysis.NotNullWhen(true)] out Message? message, out string fault)
    {
        try
        {
            message = MessageText.Read(body);
            fault = "";
            return true;
        }
        catch (JsonException unreadable)
        {
            message = null;
            fault = $"What is kept of this message cannot be read ({unreadable.Message})";
            return false;
        }
    }

    private sealed class ClaimedRow
    {
        public string MessageId { get; init; } = "";

        public string Body { get; init; } = "";

        public string QueuedAt { get; init; } = "";

        public int Attempts { get; init; }

        public string? FirstTriedAt { get; init; }
    }

    private sealed class HeldUpRow
    {
        public string MessageId { get; init; } = "";

        public string Address { get; init; } = "";

        public string State { get; init; } = "";

        public string Body { get; init; } = "";

        public string Site { get; init; } = "";

        public string Treatment { get; init; } = "";

        public int Season { get; init; }

        public string Kind { get; init; } = "";

        public int Revision { get; init; }

        public string Day { get; init; } = "";

        public string? FactDay { get; init; }

        public ToldFact Fact() => new(new NoticeKey(Site, Treatment, Season, StoredText.Kind(Kind), Revision), StoredText.DayOrNone(FactDay));
    }

    private sealed class CountsRow
    {
        public int Queued { get; init; }

        public int ForLater { get; init; }

        public int Delivered { get; init; }

        public int Refused { get; init; }

        public string? OldestWaiting { get; init; }
    }

    private sealed class UndeliveredRow
    {
        public string MessageId { get; init; } = "";

        public string Address { get; init; } = "";

        public string Day { get; init; } = "";

        public string State { get; init; } = "";

        public string QueuedAt { get; init; } = "";

        public string NotBefore { get; init; } = "";

        public int Attempts { get; init; }

        public string? LastOutcome { get; init; }

        public string? LastWords { get; init; }

        public UndeliveredMessage Message() => new(
            MessageId,
            Address,
            StoredText.Day(Day),
            StoredText.Instant(QueuedAt),
            Attempts,
            State == "queued" ? StoredText.Instant(NotBefore) : null,
            LastOutcome,
            LastWords);
    }
}
