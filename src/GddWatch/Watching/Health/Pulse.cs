using System.Globalization;
using GddWatch.Agronomy.Windows;
using GddWatch.Storage;

namespace GddWatch.Watching.Health;

/// <summary>What the worker did last, as it can be asked for from outside while it works.</summary>
internal sealed class Pulse(TimeProvider clock, TimeZoneInfo zone)
{
    /// <summary>How long after its time a daily pass may begin, or a begun one may take, before it is called overdue.</summary>
    private static readonly TimeSpan Grace = TimeSpan.FromHours(1);

    private readonly Lock turn = new();
    private DateTimeOffset? begun;
    private DateTimeOffset? next;
    private DateTimeOffset? made;
    private string? failure;
    private IReadOnlyList<KeptWindow> windows = [];
    private IReadOnlyDictionary<string, DateOnly> weatherThrough = new Dictionary<string, DateOnly>(StringComparer.Ordinal);
    private DateTimeOffset? oldestWaiting;
    private int waiting;

    /// <summary>The windows of the last pass by their states.</summary>
    public IReadOnlyDictionary<WindowState, int> WindowsByState
    {
        get
        {
            lock (turn) return Enum.GetValues<WindowState>().ToDictionary(state => state, state => windows.Count(window => window.State == state));
        }
    }

    /// <summary>How old the last weather of each site is, from its last day to today [days].</summary>
    public IReadOnlyDictionary<string, int> FeedAgeDays
    {
        get
        {
            DateOnly today = DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(clock.GetUtcNow(), zone).DateTime);
            lock (turn) return weatherThrough.ToDictionary(site => site.Key, site => today.DayNumber - site.Value.DayNumber, StringComparer.Ordinal);
        }
    }

    /// <summary>How long the oldest message waits to be delivered; nothing where none waits.</summary>
    public TimeSpan OldestWaiting
    {
        get
        {
            lock (turn) return oldestWaiting is { } since && clock.GetUtcNow() > since ? clock.GetUtcNow() - since : TimeSpan.Zero;
        }
    }

    /// <summary>How many messages wait to be delivered.</summary>
    public int Waiting
    {
        get
        {
            lock (turn) return waiting;
        }
    }

    public void PassBegun()
    {
        lock (turn) begun = clock.GetUtcNow();
    }

    /// <summary>A pass was made; what went wrong with single sites is its failure.</summary>
    public void PassMade(PassReport report)
    {
        lock (turn)
        {
            begun = null;
            made = clock.GetUtcNow();
            failure = report.Failures.Count > 0 ? string.Join(' ', report.Failures) : null;
            windows = report.Windows;
            weatherThrough = report.Windows.Where(window => window.WeatherThrough is not null)
                .GroupBy(window => window.Site, StringComparer.Ordinal)
                .ToDictionary(site => site.Key, site => site.Max(window => window.WeatherThrough!.Value), StringComparer.Ordinal);
        }
    }

    /// <summary>Another service on the same server judges; this one's passes are made by it.</summary>
    public void JudgedElsewhere()
    {
        lock (turn)
        {
            made = clock.GetUtcNow();
            failure = null;
        }
    }

    public void PassFailed(string why)
    {
        lock (turn)
        {
            begun = null;
            failure = why;
        }
    }

    public void NextPassAt(DateTimeOffset at)
    {
        lock (turn) next = at;
    }

    public void Delivered(DeliveryReport report)
    {
        lock (turn)
        {
            oldestWaiting = report.OldestWaiting;
            waiting = report.Waiting;
        }
    }

    /// <summary>Whether the service does its work: the first pass is made, the last one went well, and none is overdue.</summary>
    public HealthReport Readiness()
    {
        DateTimeOffset now = clock.GetUtcNow();
        lock (turn)
        {
            if (begun is { } since && now - since > Grace) return new HealthReport(false, $"The pass that began at {Local(since)} has not ended yet.");
            if (failure is not null) return new HealthReport(false, $"The last pass did not go well: {failure}");
            if (made is not { } at) return new HealthReport(false, "The first pass is not made yet.");
            if (begun is null && next is { } due && now - due > Grace) return new HealthReport(false, $"The pass of {Local(due)} is overdue; the last one was made at {Local(at)}.");
            string queue = waiting == 0 ? "no message waits" : waiting == 1 ? "1 message waits" : $"{waiting} messages wait";
            return new HealthReport(true, $"The last pass was made at {Local(at)}; {queue}.");
        }
    }

    private string Local(DateTimeOffset at) => TimeZoneInfo.ConvertTime(at, zone).ToString("dddd d MMMM yyyy HH:mm zzz", CultureInfo.InvariantCulture);
}
