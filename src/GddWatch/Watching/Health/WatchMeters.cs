using System.Diagnostics.Metrics;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Watching.Health;

/// <summary>What is counted and measured while the service runs.</summary>
internal sealed class WatchMeters : IDisposable
{
    /// <summary>The name under which all of it is found.</summary>
    public const string Name = "gddwatch";

    private readonly Meter meter = new(Name);
    private readonly Counter<long> queued;
    private readonly Counter<long> sent;
    private readonly Counter<long> failed;
    private readonly Histogram<double> passDuration;

    public WatchMeters(Pulse pulse)
    {
        queued = meter.CreateCounter<long>("gddwatch.notices.queued", "{message}", "Messages with notices that passes have put into the queue.");
        sent = meter.CreateCounter<long>("gddwatch.notices.sent", "{message}", "Messages with notices that were delivered.");
        failed = meter.CreateCounter<long>("gddwatch.notices.failed", "{message}", "Attempts to deliver a message that failed, for now or for good.");
        passDuration = meter.CreateHistogram("gddwatch.pass.duration", "s", "How long a pass took, from fetching the weather to the queue.", null, new InstrumentAdvice<double> { HistogramBucketBoundaries = [0.1, 0.5, 1, 5, 15, 60, 300, 1800] });
        meter.CreateObservableGauge("gddwatch.notices.waiting", () => pulse.Waiting, "{message}", "Messages that wait to be delivered.");
        meter.CreateObservableGauge("gddwatch.notices.oldest_waiting", () => pulse.OldestWaiting.TotalSeconds, "s", "How long the oldest message waits to be delivered.");
        meter.CreateObservableGauge("gddwatch.feed.age", () => pulse.FeedAgeDays.Select(site => new Measurement<int>(site.Value, new KeyValuePair<string, object?>("site", site.Key))), "d", "Days from a site's last weather to today.");
        meter.CreateObservableGauge("gddwatch.windows", () => pulse.WindowsByState.Select(each => new Measurement<int>(each.Value, new KeyValuePair<string, object?>("state", WindowStates.Word(each.Key)))), "{window}", "Windows by state at the last pass.");
        // There from the start, so that a rate can be taken from the first one on.
        queued.Add(0);
        sent.Add(0);
        failed.Add(0);
    }

    public void PassMade(PassReport report, TimeSpan took)
    {
        queued.Add(report.MessagesQueued);
        passDuration.Record(took.TotalSeconds);
    }

    public void Delivered(DeliveryReport report)
    {
        sent.Add(report.Delivered);
        failed.Add(report.Troubles.Count);
    }

    public void Dispose() => meter.Dispose();
}
