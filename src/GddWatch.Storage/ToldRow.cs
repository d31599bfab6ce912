using GddWatch.Agronomy.Changes;

namespace GddWatch.Storage;

/// <summary>A row of <c>told</c>.</summary>
internal sealed class ToldRow
{
    public string Site { get; init; } = "";

    public string Treatment { get; init; } = "";

    public int Season { get; init; }

    public string Kind { get; init; } = "";

    public string Address { get; init; } = "";

    public string Day { get; init; } = "";

    public string MessageId { get; init; } = "";

    public static ToldRow Of(NoticeKey key, Notice notice, Message message) => new()
    {
        Site = key.Site,
        Treatment = key.Treatment,
        Season = key.Season,
        Kind = NoticeKinds.Word(key.Kind),
        Address = StoredText.Address(message.Address),
        Day = StoredText.Of(notice.Day),
        MessageId = message.MessageId,
    };

    public ToldNotice Notice() => new(new NoticeKey(Site, Treatment, Season, StoredText.Kind(Kind)), Address, StoredText.Day(Day), MessageId);
}
