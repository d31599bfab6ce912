using GddWatch.Agronomy.Changes;

namespace GddWatch.Storage;

/// <summary>A notice that was queued for a person.</summary>
/// <param name="Key">The notice's key.</param>
/// <param name="Address">The person's address in lower case.</param>
/// <param name="Told">What was told.</param>
/// <param name="MessageId">The message that carries it.</param>
public sealed record ToldNotice(NoticeKey Key, string Address, Told Told, string MessageId)
{
    /// <summary>The day whose judging made it.</summary>
    public DateOnly Day => Told.Day;
}
