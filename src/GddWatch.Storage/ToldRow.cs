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

    public static ToldRow Of(Notice notice, Message message) => new()
    {
        Site = notice.Key.Site,
        Treatment = notice.Key.Treatment,
        Season = notice.Key.Season,
        Kind = NoticeKinds.Word(notice.Key.Kind),
        Address = StoredText.Address(message.Address),
        Day = StoredText.Of(notice.Day),
        MessageId = message.MessageId,
    };

    public ToldNotice Notice() => new(new NoticeKey(Site, Treatment, Season, StoredText.Kind(Kind)), Address, StoredText.Day(Day), MessageId);
}
