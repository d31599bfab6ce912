using System.Globalization;
using GddWatch.Agronomy.Changes;

namespace GddWatch.Watching;

/// <summary>What a delivery pass did.</summary>
internal sealed class DeliveryReport
{
    private readonly List<string> troubles = [];
    private readonly List<string> losses = [];
    private readonly HashSet<string> paused = new(StringComparer.OrdinalIgnoreCase);

    public int Delivered { get; private set; }

    /// <summary>How many messages still wait that are due or were tried.</summary>
    public int Waiting { get; set; }

    /// <summary>Since when the oldest of all that wait waits.</summary>
    public DateTimeOffset? OldestWaiting { get; set; }

    /// <summary>What is tried again, a sentence each.</summary>
    public IReadOnlyList<string> Troubles => troubles;

    /// <summary>What is not tried again until somebody does something about it, a sentence each.</summary>
    public IReadOnlyList<string> Losses => losses;

    public void AddDelivered() => Delivered++;

    public void AddTriedAgain(Message message, string words, bool isUnknown, DateTimeOffset next)
    {
        string became = isUnknown ? "may or may not have arrived and is tried again under the same Message-ID" : "was refused for now and is tried again";
        troubles.Add(string.Create(CultureInfo.InvariantCulture, $"The message {message.MessageId} to {message.Address} {became} from {next:yyyy-MM-dd HH:mm zzz} on: {words}"));
    }

    public void AddRefusedForGood(Message message, string words) => losses.Add($"The message {message.MessageId} to {message.Address} was refused for good: {words}");

    public void AddPaused(string address)
    {
        paused.Add(address);
        losses.Add($"{address} refused {DeliveryRules.PauseAfterRefusals} mails for good, one after the other, and is paused: nothing is sent there any more. {PausedWords.Advice(address)}");
    }

    /// <summary>Whether an address was paused in this pass.</summary>
    public bool IsPaused(string address) => paused.Contains(address);
}
