using System.Text.Json;
using System.Text.Json.Nodes;
using GddWatch.Agronomy.Changes;
using GddWatch.Storage;
using Xunit;

namespace GddWatch.Tests.Storage;

public sealed class MessageTextTests
{
    public static TheoryData<NoticeKind> Kinds => [.. Enum.GetValues<NoticeKind>()];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_message_comes_back_equal_in_every_field(NoticeKind kind)
    {
        Message message = Full(kind);

        Message again = MessageText.Read(MessageText.Write(message));

        // Field by field over whatever fields there are, so that a new one cannot be forgotten.
        Assert.Equivalent(message, again, strict: true);
        Assert.Equal(message.Notices[0].Key, again.Notices[0].Key);
    }

    [Fact]
    public void No_field_of_the_sample_is_left_at_its_default_so_that_a_lost_one_would_be_seen()
    {
        JsonNode text = JsonNode.Parse(MessageText.Write(Full(NoticeKind.Opened)))!;

        Assert.Equal(typeof(Message).GetProperties().Length, text.AsObject().Count);
        Assert.Equal(typeof(Notice).GetProperties().Length, text["notices"]![0]!.AsObject().Count);
        Assert.All(text.AsObject(), field => Assert.NotEmpty(field.Value!.ToJsonString().Trim('"', '[', ']')));
        Assert.All(text["notices"]![0]!.AsObject(), field => Assert.NotEmpty(field.Value!.ToJsonString().Trim('"', '[', ']')));
    }

    [Fact]
    public void Kinds_and_days_are_written_as_people_read_them()
    {
        JsonNode notice = JsonNode.Parse(MessageText.Write(Full(NoticeKind.HeadsUp)))!["notices"]![0]!;

        Assert.Equal("heads-up", (string?)notice["key"]!["kind"]);
        Assert.Equal("2026-04-11", (string?)notice["since"]);
        Assert.Contains("72 °F", MessageText.Write(Full(NoticeKind.HeadsUp)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("null")]
    [InlineData("{}")]
    [InlineData("[1]")]
    [InlineData("""{"messageId":null}""")]
    public void Text_that_is_no_message_is_refused(string text) => Assert.ThrowsAny<JsonException>(() => MessageText.Read(text));

    [Theory]
    [InlineData("\"opend\"")]
    [InlineData("1")]
    [InlineData("null")]
    public void A_kind_that_does_not_exist_is_refused(string kind)
    {
        string text = MessageText.Write(Full(NoticeKind.Opened)).Replace("\"opened\"", kind, StringComparison.Ordinal);

        Assert.ThrowsAny<JsonException>(() => MessageText.Read(text));
    }

    [Fact]
    public void A_message_kept_before_a_field_with_a_default_existed_is_read_with_that_default()
    {
        JsonNode text = JsonNode.Parse(MessageText.Write(Full(NoticeKind.Opened)))!;
        text.AsObject().Remove("remark");
        text.AsObject().Remove("operatorWords");
        text["notices"]![0]!.AsObject().Remove("dataRemarks");

        Message message = MessageText.Read(text.ToJsonString());

        Assert.Equal("", message.Remark);
        Assert.Empty(message.OperatorWords);
        Assert.Empty(message.Notices[0].DataRemarks);
    }

    private static Message Full(NoticeKind kind) => Kept.Message("<1@x>", "a@example.org", Kept.Key(kind: kind)) with
    {
        AddresseeName = "The adviser 🌱 “quoted” \\ \u0001",
        Remark = "Invented weather.",
        OperatorWords = ["One.", "Two."],
        Bulletin = new Bulletin(
            [
                new BulletinSite
                {
                    Name = "North Common",
                    Open = [new BulletinLine("Overseeding", "open since Sunday 12 April")],
                    Nearing = [new BulletinLine("Levelling", "usually opens soon")],
                    Waits = [new BulletinLine("Feeding", "a local rule bans it")],
                    Always = ["Watering every day"],
                    Care = [new BulletinLine("Mowing", "about every 7 days")],
                    Done = [new BulletinLine("Overseeding", "recorded for Sunday 12 April")],
                    Chart = new BulletinChart(new DateOnly(2026, 4, 12), "°F", "°F-days", new ChartCurve([50.25, null], [48, 49], [55, 56]), new ChartCurve([1, 2], [], []), "Soil."),
                },
            ],
            [new BulletinLine("Watering every day", "It makes shallow roots.")],
            ["The label is the law."]),
        Notices =
        [
            Kept.Notice(Kept.Key(kind: kind)) with
            {
                FoundSo = true,
                Facts = [new ToldFact(Kept.Key(kind: NoticeKind.Closing, season: 2025) with { Revision = 2 }, new DateOnly(2026, 4, 3)), new ToldFact(Kept.Key(), null)],
                ExpectedEnd = "about Friday, 5 June",
                DoNot = ["Do not seed."],
                DataRemarks = ["Two days were filled."],
                Entry = new CalendarEntry(3, new DateOnly(2026, 4, 11), new DateOnly(2026, 5, 2), "It usually closes then.", IsWithdrawn: true),
                Chart = new NoticeChart(
                    new DateOnly(2026, 2, 1), new DateOnly(2026, 4, 12), [new ChartPanel("Soil [°F]", [50, 55.5], new ChartCurve([50.25, null], [48, 49], [55, 56]))], "Soil."),
            },
        ],
    };
}
