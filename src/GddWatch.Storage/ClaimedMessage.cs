using GddWatch.Agronomy.Changes;

namespace GddWatch.Storage;

/// <summary>A message that a worker has in hand; until the claim runs out nobody else gets it.</summary>
/// <param name="Message">The message.</param>
/// <param name="QueuedAt">When it was queued.</param>
/// <param name="Attempt">Which attempt at it this is, from 1.</param>
/// <param name="ClaimedUntil">When the claim runs out.</param>
/// <param name="Owner">The claim's own token.</param>
public sealed record ClaimedMessage(Message Message, DateTimeOffset QueuedAt, int Attempt, DateTimeOffset ClaimedUntil, string Owner)
{
    /// <summary>When it was first claimed to be tried.</summary>
    public DateTimeOffset FirstTriedAt { get; init; }
}
