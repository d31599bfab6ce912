using System.Diagnostics;
using GddWatch.Notices;
using GddWatch.Notices.Channels;
using MimeKit;

namespace GddWatch.Benchmarks.Mail;

/// <summary>Another channel, and the memory as it was after every so many mails.</summary>
internal sealed class WatchedChannel(IDeliveryChannel inner, int every) : IDeliveryChannel
{
    private readonly List<(int Mails, double InUseMB, double WorkingSetMB)> course = [];
    private int mails;

    /// <summary>The memory in use after a collection, and what the process holds [MB].</summary>
    public IReadOnlyList<(int Mails, double InUseMB, double WorkingSetMB)> Course => course;

    public string Name => inner.Name;

    public TimeSpan LongestDelivery => inner.LongestDelivery;

    public async Task<DeliveryOutcome> DeliverAsync(MimeMessage message, CancellationToken stop)
    {
        DeliveryOutcome outcome = await inner.DeliverAsync(message, stop);
        if (++mails % every == 0)
        {
            using var process = Process.GetCurrentProcess();
            course.Add((mails, GC.GetTotalMemory(forceFullCollection: true) / 1e6, process.WorkingSet64 / 1e6));
        }

        return outcome;
    }

    public ValueTask DisposeAsync() => inner.DisposeAsync();
}
