using GddWatch.Agronomy.Changes;

namespace GddWatch.Notices.Composing;

/// <summary>
/// Invented messages that lead templates through all their branches, so that a misspelt name is found when the service starts and not when a window opens.
/// </summary>
internal static class TrialMessages
{
    private static readonly DateOnly Day = new(2026, 4, 12);

    public static IReadOnlyList<Message> Notices { get; } =
    [
        .. Enum.GetValues<NoticeKind>().Select(kind => Message([Full(kind)])),
        Message([Bare(foundSo: false)]),
        Message([Bare(foundSo: true)]),
        Message([.. Enum.GetValues<NoticeKind>().Select(Full), Bare(foundSo: true)]),
        Message([Bare(foundSo: true), Bare(foundSo: true)]),
        Message([Full(NoticeKind.Opened)]) with { AddresseeName = "", Remark = "" },
    ];

    public static IReadOnlyList<Message> Operator { get; } =
    [
        Message([]) with { OperatorWords = ["One thing."] },
        Message([]) with { OperatorWords = ["One thing.", "Another thing."], AddresseeName = "", Remark = "" },
    ];

    public static IReadOnlyList<Message> Bulletins { get; } =
    [
        Message([]) with { Bulletin = new([new() { Name = "Trial site" }], [], []) },
        Message([]) with
        {
            AddresseeName = "",
            Remark = "",
            Bulletin = new([Site() with { Chart = new(Day, "°F", "°F-days", new([50, 51], [48, 49], [55, 56]), new([10, null], [], []), "Soil at 2 inches.") }, Site()], [new("A task", "It is too early.")], ["The label is the law."]),
        },
    ];

    private static BulletinSite Site() => new()
    {
        Name = "Trial site",
        Open = [new("A task", "open since Sunday 12 April")],
        Nearing = [new("A task", "usually opens about Sunday 12 April")],
        DaysAhead = "The days ahead are judged by 12 earlier years here, no forecast.",
        Waits = [new("A task", "held")],
        Care = [new("Mowing", "about every 7 days")],
        Done = [new("A task", "recorded for Sunday 12 April")],
    };

    private static Message Message(IReadOnlyList<Notice> notices) => new()
    {
        MessageId = "trial@example.org",
        Address = "reader@example.org",
        AddresseeName = "A reader",
        Region = "Trial region",
        Remark = "This is invented.",
        OperatorAddress = "operator@example.org",
        Day = Day,
        Notices = notices,
    };

    private static Notice Bare(bool foundSo) => new()
    {
        Key = new("trial-site", "trial", 2026, NoticeKind.Opened),
        Day = Day,
        Since = Day,
        FoundSo = foundSo,
        SiteName = "Trial site",
        TreatmentName = "Trial",
        Headline = "Trial is open at Trial site",
        Reason = "It is a trial.",
        Figures = [],
        Do = [],
        DoNot = [],
        Choices = [],
        Cautions = [],
    };

    private static Notice Full(NoticeKind kind) => Bare(foundSo: false) with
    {
        Key = new("trial-site", "trial", 2026, kind),
        Figures = [new("Soil temperature", "51 °F", "50 °F"), new("Heat sum", "20 °F-days", "")],
        ExpectedEnd = "About a month.",
        Do = ["Do this."],
        DoNot = ["Do not do that."],
        Choices = ["One or the other."],
        Cautions = ["The label is the law."],
        DataRemarks = ["One day was filled."],
        Entry = new(1, Day, Day.AddDays(21), "It usually closes three weeks later.", IsWithdrawn: false),
        Chart = new(Day, Day.AddDays(1), [new("Soil [°F]", [50], new([50, 51], [48, 49], [55, 56]))], "Soil at 2 inches."),
    };
}
