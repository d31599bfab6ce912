using GddWatch.Agronomy.Changes;
using GddWatch.Notices;

namespace GddWatch.Watching;

/// <summary>What a delivery pass did.</summary>
internal sealed class DeliveryReport
{
    private readonly List<string> troubles = [];

    public int Delivered { get; private set; }

    /// <summary>How many messages still wait.</summary>
    public int Waiting { get; set; }

    /// <summary>Since when the oldest of them waits.</summary>
    public DateTimeOffset? OldestWaiting { get; set; }

    /// <summary>What could not be delivered, a sentence each.</summary>
    public IReadOnlyList<string> Troubles => troubles;

    public void Add(Message message, DeliveryOutcome outcome)
    {
        if (outcome is DeliveryOutcome.Accepted)
        {
            Delivered++;
            return;
        }

        string words = outcome switch
        {
            DeliveryOutcome.RefusedForNow refused => $"was refused for now and is tried again: {refused.Words}",
            DeliveryOutcome.RefusedForGood refused => $"was refused for good: {refused.Words}",
            DeliveryOutcome.Unknown unknown => $"may or may not have arrived and is tried again under the same Message-ID: {unknown.Words}",
            _ => "was not delivered.",
        };
        troubles.Add($"The message {message.MessageId} to {message.Address} {words}");
    }
}
