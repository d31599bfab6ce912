using GddWatch.Agronomy.Changes;

namespace GddWatch.Storage;

/// <summary>A message for the queue.</summary>
/// <param name="Message">The message.</param>
/// <param name="NotBefore">The instant before which it is not delivered, such as the end of quiet hours; null is at once.</param>
public sealed record QueuedMessage(Message Message, DateTimeOffset? NotBefore = null);
