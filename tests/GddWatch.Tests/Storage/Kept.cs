using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Windows;
using GddWatch.Storage;
using Microsoft.Extensions.Time.Testing;

namespace GddWatch.Tests.Storage;

/// <summary>Invented windows, messages and passes to keep.</summary>
internal static class Kept
{
    public static readonly DateOnly Day = new(2026, 4, 12);

    public static readonly DateTimeOffset Morning = new(2026, 4, 12, 11, 0, 0, TimeSpan.Zero);

    public static Task<Database> OpenAsync(string path, CancellationToken stop) => Database.OpenAsync(path, new FakeTimeProvider(Morning), stop);

    public static KeptWindow Window(string site = "north-common", string treatment = "overseeding", int season = 2026, WindowState state = WindowState.Open) => new()
    {
        Site = site,
        Treatment = treatment,
        Season = season,
        State = state,
        Since = Day,
        Reason = "The soil at 5 cm has fallen to 72 °F on Sunday, 12 April.",
        JudgedOn = Day,
        Configuration = "c1",
    };

    public static NoticeKey Key(string treatment = "overseeding", NoticeKind kind = NoticeKind.Opened, string site = "north-common", int season = 2026) =>
        new(site, treatment, season, kind);

    public static Notice Notice(NoticeKey key) => new()
    {
        Key = key,
        Day = Day,
        Since = Day.AddDays(-1),
        SiteName = "North Common",
        TreatmentName = "Overseeding",
        Headline = "Overseeding is open at North Common",
        Reason = "The soil at 5 cm has fallen to 72 °F.",
        Figures = [new Figure("Soil at 5 cm", "72 °F", "73 °F"), new Figure("Days left", "61 days", "")],
        Do = ["Seed <now> & water \"lightly\"."],
        DoNot = [],
        Choices = ["No pre-emergent is recorded here."],
        Cautions = ["The label is the law."],
        Facts = [new ToldFact(key, Day.AddDays(-1))],
    };

    public static Message Message(string id, string address, params NoticeKey[] keys) => new()
    {
        MessageId = id,
        Address = address,
        Region = "Alder Reach",
        OperatorAddress = "operator@example.org",
        Day = Day,
        Notices = [.. keys.Select(Notice)],
        OperatorWords = keys.Length == 0 ? ["The feed of North Common is two days late."] : [],
    };

    public static PassResult Pass(params Message[] messages) => new()
    {
        Day = Day,
        At = Morning,
        Configuration = "c1",
        Sites = ["north-common"],
        Windows = [Window()],
        Messages = [.. messages.Select(message => new QueuedMessage(message))],
    };
}
