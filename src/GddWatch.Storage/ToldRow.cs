using GddWatch.Agronomy.Changes;

namespace GddWatch.Storage;

/// <summary>A row of <c>told</c>.</summary>
internal sealed class ToldRow
{
    public string Site { get; init; } = "";

    public string Treatment { get; init; } = "";

    public int Season { get; init; }

    public string Kind { get; init; } = "";

    public int Revision { get; init; }

    public string Address { get; init; } = "";

    public string Day { get; init; } = "";

    public string? Fact { get; init; }

    public string Configuration { get; init; } = "";

    public string MessageId { get; init; } = "";

    public static ToldRow Of(ToldFact fact, Notice notice, Message message, string configuration) => new()
    {
        Site = fact.Key.Site,
        Treatment = fact.Key.Treatment,
        Season = fact.Key.Season,
        Kind = NoticeKinds.Word(fact.Key.Kind),
        Revision = fact.Key.Revision,
        Address = StoredText.Address(message.Address),
        Day = StoredText.Of(notice.Day),
        Fact = StoredText.Of(fact.Day),
        Configuration = configuration,
        MessageId = message.MessageId,
    };

    public ToldNotice Notice() => new(
        new NoticeKey(Site, Treatment, Season, StoredText.Kind(Kind), Revision),
        Address,
        new Told(StoredText.Day(Day), StoredText.DayOrNone(Fact), Configuration, Revision),
        MessageId);
}
