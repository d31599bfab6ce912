namespace GddWatch.Storage;

/// <summary>An address that refused mails for good, one after the other.</summary>
/// <param name="Address">The address in lower case.</param>
/// <param name="Refusals">How many mails in a row.</param>
/// <param name="LastWords">What the server said last.</param>
/// <param name="LastAt">When.</param>
/// <param name="PausedAt">Since when nothing is sent there; null where it is still tried.</param>
/// <param name="ResumedAt">When somebody asked for it to be tried again; the next daily pass does so.</param>
public sealed record RefusingAddress(string Address, int Refusals, string LastWords, DateTimeOffset LastAt, DateTimeOffset? PausedAt, DateTimeOffset? ResumedAt)
{
    /// <summary>Whether nothing is sent there.</summary>
    public bool IsPaused => PausedAt is not null && ResumedAt is null;

    /// <summary>Whether an address is this one; capitals make no difference.</summary>
    public bool Is(string address) => StoredText.Address(address) == Address;
}
