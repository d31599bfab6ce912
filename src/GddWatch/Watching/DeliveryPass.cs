using GddWatch.Notices;
using GddWatch.Notices.Channels;
using GddWatch.Notices.Composing;
using GddWatch.Storage;
using MimeKit;

namespace GddWatch.Watching;

/// <summary>Delivers what is queued: claim, compose, send, record, until nothing is due. Reads the queue alone, so that a crash anywhere leaves it with the same work.</summary>
internal sealed class DeliveryPass(Outbox outbox, MailComposer composer, IDeliveryChannel channel, TimeZoneInfo zone, Func<double> chance)
{
    private const int MostClaimedAtOnce = 20;

    /// <summary>After so many refusals in a row the other side is taken to be down, and the rest waits.</summary>
    private const int RefusalsThatStop = 3;

    /// <summary>Longer than sending one batch can take, so that a claim does not run out under a living worker.</summary>
    private static readonly TimeSpan ClaimFor = TimeSpan.FromMinutes(30);

    /// <summary>Delivers all that is due.</summary>
    /// <param name="clock">What time it is, asked again for each claim; in a replay, the replayed time.</param>
    /// <param name="stop">Stops between two messages.</param>
    public async Task<DeliveryReport> RunAsync(Func<DateTimeOffset> clock, CancellationToken stop)
    {
        var report = new DeliveryReport();
        int refusalsInARow = 0;
        while (refusalsInARow < RefusalsThatStop)
        {
            IReadOnlyList<ClaimedMessage> claimed = await outbox.ClaimDueAsync(clock(), ClaimFor, MostClaimedAtOnce, stop);
            if (claimed.Count == 0) break;
            foreach (ClaimedMessage each in claimed)
            {
                if (refusalsInARow >= RefusalsThatStop)
                {
                    await outbox.ReleaseAsync(each, stop);
                    continue;
                }

                DeliveryOutcome outcome = await DeliverAsync(each, stop);
                refusalsInARow = outcome is DeliveryOutcome.RefusedForNow or DeliveryOutcome.Unknown ? refusalsInARow + 1 : 0;
                // What was handed over must be recorded even when the program is being stopped.
                await RecordAsync(each, outcome, clock(), CancellationToken.None);
                report.Add(each.Message, outcome);
            }
        }

        OutboxCounts counts = await outbox.CountAsync(stop);
        report.Waiting = counts.Queued;
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

    private Task<bool> RecordAsync(ClaimedMessage claimed, DeliveryOutcome outcome, DateTimeOffset now, CancellationToken stop) => outcome switch
    {
        DeliveryOutcome.Accepted accepted => outbox.RecordDeliveredAsync(claimed, accepted.Where, now, stop),
        DeliveryOutcome.RefusedForNow refused => outbox.RecordRefusedForNowAsync(claimed, refused.Words, now + RetryPause.After(claimed.Attempt, chance()), stop),
        DeliveryOutcome.RefusedForGood refused => outbox.RecordRefusedForGoodAsync(claimed, refused.Words, now, stop),
        DeliveryOutcome.Unknown unknown => outbox.RecordUnknownAsync(claimed, unknown.Words, now + RetryPause.After(claimed.Attempt, chance()), stop),
        _ => throw new System.Diagnostics.UnreachableException(),
    };
}
