using GddWatch.Agronomy.Weather;
using GddWatch.Feeds.Faults;

namespace GddWatch.Feeds;

/// <summary>What one reading of a feed gave.</summary>
/// <param name="Series">The good days; null where there is none, or where the feed is refused.</param>
/// <param name="Faults">What was wrong.</param>
public sealed record FeedReading(DailySeries? Series, IReadOnlyList<Fault> Faults)
{
    /// <summary>What the operator should look at.</summary>
    public IReadOnlyList<FeedRemark> Remarks { get; init; } = [];

    /// <summary>Whether the feed as a whole cannot be used.</summary>
    public bool IsRefused => Faults.Any(fault => fault.Severity == FaultSeverity.Refused);
}
