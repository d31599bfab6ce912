using MimeKit;

namespace GddWatch.Notices.Channels;

/// <summary>A way by which messages reach people.</summary>
public interface IDeliveryChannel : IAsyncDisposable
{
    /// <summary>The channel as people call it, such as "the folder var/mail".</summary>
    string Name { get; }

    /// <summary>How long delivering one message can take at most, whatever the other side does.</summary>
    TimeSpan LongestDelivery { get; }

    /// <summary>Delivers one message. What goes wrong on the way is an outcome, not an exception; only being stopped throws.</summary>
    Task<DeliveryOutcome> DeliverAsync(MimeMessage message, CancellationToken stop);
}
