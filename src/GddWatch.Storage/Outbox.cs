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
                        claimed.Add(new ClaimedMessage(message, StoredText.Instant(row.QueuedAt), row.Attempts, until, owner));
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

    /// <summary>Records that a message was delivered. Taken even if the claim had run out: it is true whoever says it.</summary>
    /// <param name="claimed">The message.</param>
    /// <param name="where">Where it went: the file, or the server's words.</param>
    /// <param name="at">When.</param>
    /// <param name="stop">To be stopped by.</param>
    public Task<bool> RecordDeliveredAsync(ClaimedMessage claimed, string where, DateTimeOffset at, CancellationToken stop) =>
        RecordAsync(MessageSql.Delivered, new { messageId = claimed.Message.MessageId, words = where, at = StoredText.Of(at) }, stop);

    /// <summary>Records that a message was refused for now, with the server's words, and when to try again.</summary>
    public Task<bool> RecordRefusedForNowAsync(ClaimedMessage claimed, string words, DateTimeOffset nextAttempt, CancellationToken stop) =>
        RecordTryAgainAsync(claimed, "refused-for-now", words, nextAttempt, stop);

    /// <summary>Records that nobody knows whether a message arrived, and when to try again: it may come twice rather than never, under the same Message-ID.</summary>
    public Task<bool> RecordUnknownAsync(ClaimedMessage claimed, string words, DateTimeOffset nextAttempt, CancellationToken stop) =>
        RecordTryAgainAsync(claimed, "unknown", words, nextAttempt, stop);

    /// <summary>Records that a message was refused for good, with the server's words.</summary>
    public Task<bool> RecordRefusedForGoodAsync(ClaimedMessage claimed, string words, DateTimeOffset at, CancellationToken stop) => RecordAsync(
        MessageSql.RefusedForGood, new { messageId = claimed.Message.MessageId, owner = claimed.Owner, words, at = StoredText.Of(at) }, stop);

    /// <summary>The queue in numbers.</summary>
    public Task<OutboxCounts> CountAsync(CancellationToken stop) => database.ReadAsync(
        async work =>
        {
            CountsRow row = await work.SingleAsync<CountsRow>(MessageSql.Count);
            DateTimeOffset? oldest = row.OldestWaiting is { } instant ? StoredText.Instant(instant) : null;
            return new OutboxCounts(row.Queued, row.Delivered, row.Refused, oldest);
        },
        stop);

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
    }

    private sealed class CountsRow
    {
        public int Queued { get; init; }

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
