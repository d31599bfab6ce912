namespace GddWatch.Storage;

/// <summary>The queue in numbers.</summary>
/// <param name="Queued">Messages that wait or are in hand.</param>
/// <param name="Delivered">Messages that were delivered.</param>
/// <param name="Refused">Messages that were refused for good.</param>
/// <param name="OldestWaiting">When the oldest of the waiting was queued; null where none waits.</param>
public sealed record OutboxCounts(int Queued, int Delivered, int Refused, DateTimeOffset? OldestWaiting)
{
    /// <summary>How many of those queued have not come to their time yet, such as the end of quiet hours, and were not tried.</summary>
    public int ForLater { get; init; }
}
