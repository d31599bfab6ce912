namespace GddWatch.Storage;

/// <summary>A message that has not been delivered, and why.</summary>
/// <param name="MessageId">The message.</param>
/// <param name="Address">The addressee.</param>
/// <param name="Day">The day whose judging made it.</param>
/// <param name="QueuedAt">When it was queued.</param>
/// <param name="Attempts">How often it was tried.</param>
/// <param name="NextAttempt">The instant before which it is not tried again; null where it was refused for good.</param>
/// <param name="LastOutcome">"refused-for-now", "refused-for-good" or "unknown"; null before the first outcome.</param>
/// <param name="LastWords">The server's last words, or what went wrong on the way; null before the first outcome.</param>
public sealed record UndeliveredMessage(
    string MessageId,
    string Address,
    DateOnly Day,
    DateTimeOffset QueuedAt,
    int Attempts,
    DateTimeOffset? NextAttempt,
    string? LastOutcome,
    string? LastWords);
