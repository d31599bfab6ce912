using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Treatments;

namespace GddWatch.Notices.Composing;

/// <summary>A message as templates see it, under the name "mail"; a template writes the names in lower case with underscores.</summary>
internal sealed record MailView
{
    public required string Region { get; init; }

    public required string Remark { get; init; }

    /// <summary>The operator's address.</summary>
    public required string Operator { get; init; }

    /// <summary>The link by which a reader asks the operator to stop these mails.</summary>
    public required string StopLink { get; init; }

    public required string Addressee { get; init; }

    /// <summary>The day whose judging made it, with weekday and year.</summary>
    public required string Day { get; init; }

    /// <summary>How many notices it holds.</summary>
    public required int Count { get; init; }

    /// <summary>Whether any notice tells a change, rather than how things stood at the first look.</summary>
    public required bool Changed { get; init; }

    public required IReadOnlyList<NoticeView> Notices { get; init; }

    /// <summary>The weekly overview; without sites where the mail is another one.</summary>
    public required BulletinView Bulletin { get; init; }

    /// <summary>What the operator is told, a sentence each.</summary>
    public required IReadOnlyList<string> Words { get; init; }

    /// <summary>A message as templates see it.</summary>
    /// <param name="message">The message.</param>
    /// <param name="withPictures">Whether its charts are drawn.</param>
    public static MailView Of(Message message, bool withPictures) => new()
    {
        Region = OneLine.Of(message.Region),
        Remark = OneLine.Of(message.Remark),
        Operator = OneLine.Of(message.OperatorAddress),
        StopLink = StopRequest.Link(message.OperatorAddress, message.Region),
        Addressee = OneLine.Of(message.AddresseeName),
        Day = Wording.Day(message.Day),
        Count = message.Notices.Count,
        Changed = message.Notices.Any(notice => !notice.FoundSo),
        Notices = [.. message.Notices.Select((notice, index) => NoticeView.Of(notice, index, withPictures))],
        Bulletin = BulletinView.Of(message.Bulletin ?? new Bulletin([], [], []), withPictures),
        Words = OneLine.OfEach(message.OperatorWords),
    };
}
