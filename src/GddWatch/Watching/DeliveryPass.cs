using System.Globalization;
using GddWatch.Notices;
using GddWatch.Notices.Channels;
using GddWatch.Notices.Composing;
using GddWatch.Storage;
using MimeKit;

namespace GddWatch.Watching;

/// <summary>Delivers what is queued: claim, compose, send, record, until nothing is due. Reads the queue alone, so that a crash anywhere leaves it with the same work.</summary>
internal sealed class DeliveryPass(Outbox outbox, MailComposer composer, IDeliveryChannel channel, DeliveryRules rules, TimeZoneInfo zone, Func<double> chance)
{
    private const int MostClaimedAtOnce = 20;

    /// <summary>After so many refusals in a row that concern all mails the other side is taken to be down, and the rest waits.</summary>
    private const int RefusalsThatStop = 3;

    /// <summary>After so many refusals for now in a row, each of its own mail, they are taken to concern all.</summary>
    private const int SingleRefusalsThatStop = 20;

    private static readonly TimeSpan LeastClaim = TimeSpan.FromMinutes(30);

    /// <summary>How long recording may take once the program is asked to stop, so that it has stopped within ten seconds.</summary>
    private static readonly TimeSpan RecordingAfterStop = TimeSpan.FromSeconds(2);

    /// <summary>Delivers all that is due.</summary>
    /// <param name="clock">What time it is, asked again for each message; in a replay, the replayed time.</param>
    /// <param name="stop">Stops between two messages.</param>
    public async Task<DeliveryReport> RunAsync(Func<DateTimeOffset> clock, CancellationToken stop)
    {
        var report = new DeliveryReport();
        var refusals = new RefusalsInARow();
        // Long enough that the first message of a batch is delivered before it runs out; the others are looked at one by one.
        TimeSpan claimFor = LeastClaim > 2 * channel.LongestDelivery ? LeastClaim : 2 * channel.LongestDelivery;
        while (!refusals.AreEnough)
        {
            IReadOnlyList<ClaimedMessage> claimed = await outbox.ClaimDueAsync(clock(), claimFor, MostClaimedAtOnce, stop);
            if (claimed.Count == 0) break;
            foreach (ClaimedMessage each in claimed)
            {
                // A claim must not run out under a living worker: another one would send the same message.
                if (refusals.AreEnough || clock() + channel.LongestDelivery > each.ClaimedUntil)
                {
                    await outbox.ReleaseAsync(each, stop);
                }
                else if (rules.QuietUntil(each.Message.Address, clock()) is { } end)
                {
                    await outbox.PostponeAsync(each, end, stop);
                }
                else if (!report.IsPaused(each.Message.Address))
                {
                    DeliveryOutcome outcome = await DeliverAsync(each, stop);
                    refusals.Count(outcome);
                    // What was handed over must be recorded even when the program is being stopped; a database that keeps silent then is not waited for.
                    using var recording = new CancellationTokenSource();
                    await using CancellationTokenRegistration stopping = stop.Register(() => recording.CancelAfter(RecordingAfterStop));
                    await RecordAsync(each, outcome, clock(), report, recording.Token);
                }
            }
        }

        OutboxCounts counts = await outbox.CountAsync(clock(), stop);
        report.Waiting = counts.Queued - counts.ForLater;
        report.OldestWaiting = counts.OldestWaiting;
        return report;
    }

    private async Task<DeliveryOutcome> DeliverAsync(ClaimedMessage claimed, CancellationToken stop)
    {
        MimeMessage mail;
        try
        {
            mail = composer.Compose(claimed.Message, TimeZoneInfo.ConvertTime(claimed.QueuedAt, zone));
        }
        catch (Exception fault) when (fault is MailTemplateException or ArgumentException)
        {
            return new DeliveryOutcome.RefusedForNow($"The mail could not be written: {fault.Message}");
        }

        return await channel.DeliverAsync(mail, stop);
    }

    private Task RecordAsync(ClaimedMessage claimed, DeliveryOutcome outcome, DateTimeOffset now, DeliveryReport report, CancellationToken stop) => outcome switch
    {
        DeliveryOutcome.Accepted accepted => RecordDeliveredAsync(claimed, accepted, now, report, stop),
        DeliveryOutcome.RefusedForNow refused => RecordTryAgainAsync(claimed, refused.Words, isUnknown: false, now, report, stop),
        DeliveryOutcome.RefusedForGood refused => RecordRefusedForGoodAsync(claimed, refused.Words, now, report, stop),
        DeliveryOutcome.Unknown unknown => RecordTryAgainAsync(claimed, unknown.Words, isUnknown: true, now, report, stop),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private async Task RecordDeliveredAsync(ClaimedMessage claimed, DeliveryOutcome.Accepted accepted, DateTimeOffset now, DeliveryReport report, CancellationToken stop)
    {
        await outbox.RecordDeliveredAsync(claimed, accepted.Where, now, stop);
        report.AddDelivered();
    }

    private async Task RecordTryAgainAsync(ClaimedMessage claimed, string words, bool isUnknown, DateTimeOffset now, DeliveryReport report, CancellationToken stop)
    {
        DateTimeOffset next = rules.NotInQuiet(claimed.Message.Address, now + RetryPause.After(claimed.Attempt, chance()));
        if (next - claimed.FirstTriedAt > rules.GiveUpAfter)
        {
            string givenUp = $"Given up after {Days(rules.GiveUpAfter)} of trying: {words}";
            await outbox.RecordRefusedForGoodAsync(claimed, givenUp, now, stop);
            report.AddRefusedForGood(claimed.Message, givenUp);
            return;
        }

        await (isUnknown ? outbox.RecordUnknownAsync(claimed, words, next, stop) : outbox.RecordRefusedForNowAsync(claimed, words, next, stop));
        report.AddTriedAgain(claimed.Message, words, isUnknown, TimeZoneInfo.ConvertTime(next, zone));
    }

    private async Task RecordRefusedForGoodAsync(ClaimedMessage claimed, string words, DateTimeOffset now, DeliveryReport report, CancellationToken stop)
    {
        bool isPaused = await outbox.RecordRefusedByAddressAsync(claimed, words, rules.PauseAfter(claimed.Message.Address), now, stop);
        report.AddRefusedForGood(claimed.Message, words);
        if (isPaused) report.AddPaused(claimed.Message.Address);
    }

    private static string Days(TimeSpan time) => time == TimeSpan.FromDays(1) ? "1 day" : string.Create(CultureInfo.InvariantCulture, $"{time.TotalDays:0.#} days");

    /// <summary>Tells one mail's trouble from everybody's.</summary>
    private sealed class RefusalsInARow
    {
        private int ofAll;
        private int ofSingle;

        public bool AreEnough => ofAll >= RefusalsThatStop || ofSingle >= SingleRefusalsThatStop;

        public void Count(DeliveryOutcome outcome)
        {
            // A line that breaks under one mail may break under the next; a mailbox that is full says nothing of the others.
            ofAll = outcome is DeliveryOutcome.Unknown or DeliveryOutcome.RefusedForNow { ConcernsAll: true } ? ofAll + 1 : 0;
            ofSingle = outcome is DeliveryOutcome.RefusedForNow { ConcernsAll: false } ? ofSingle + 1 : 0;
        }
    }
}
