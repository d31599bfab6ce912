using System.Net;
using GddWatch.Agronomy.Changes;
using MimeKit;
using Xunit;

namespace GddWatch.Tests.Notices.Composing;

/// <summary>Names, notices and words come from files, feeds and people: none may add a header, a tag or a line.</summary>
public sealed class MailInjectionTests
{
    private const string Hostile = "Common\r\nBcc: thief@example.net\r\n\r\n<script>alert(1)</script><img src=x onerror=y>\" ' {{ mail.operator }}{% include 'x' %}\u202Eeveil\u0000\u2028end";

    public static TheoryData<string, Message> Poisoned => new()
    {
        { "notices", SampleMessages.One with { Region = Hostile, Remark = Hostile, AddresseeName = Hostile, Notices = [Poison(), Poison()] } },
        { "one notice", SampleMessages.One with { Region = Hostile, Remark = Hostile, AddresseeName = Hostile, Notices = [Poison()] } },
        { "operator", SampleMessages.ForOperator with { Region = Hostile, Remark = Hostile, AddresseeName = Hostile, OperatorWords = [Hostile] } },
        { "bulletin", SampleMessages.One with { Region = Hostile, Remark = Hostile, AddresseeName = Hostile, Notices = [], Bulletin = PoisonedBulletin() } },
        { "several words", SampleMessages.ForOperator with { Region = Hostile, OperatorWords = [Hostile, Hostile] } },
    };

    [Theory]
    [MemberData(nameof(Poisoned), DisableDiscoveryEnumeration = true)]
    public void No_header_is_added(string _, Message message)
    {
        MimeMessage mail = Composers.ReadBack(message);
        string[] expected = [.. Composers.ReadBack(message.Notices.Count > 0 || message.Bulletin is not null ? SampleMessages.One : SampleMessages.ForOperator).Headers.Select(header => header.Field)];

        Assert.Equal(expected, mail.Headers.Select(header => header.Field));
        Assert.Empty(mail.Bcc);
        Assert.Single(mail.To);
        Assert.DoesNotContain(mail.Subject!, char.IsControl);
        Assert.Equal(2, ((Multipart)mail.Body!).Count);
    }

    [Theory]
    [MemberData(nameof(Poisoned), DisableDiscoveryEnumeration = true)]
    public void No_markup_is_added_and_no_template_language_is_run(string _, Message message)
    {
        string html = Composers.ReadBack(message).HtmlBody!;

        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<img", html, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("&lt;script&gt;", html, StringComparison.Ordinal);
        Assert.Contains("{{ mail.operator }}{% include 'x' %}", WebUtility.HtmlDecode(html), StringComparison.Ordinal);
        Assert.DoesNotContain('\u202E', WebUtility.HtmlDecode(html)!);
    }

    [Theory]
    [MemberData(nameof(Poisoned), DisableDiscoveryEnumeration = true)]
    public void No_line_of_its_own_is_added_to_the_text(string _, Message message)
    {
        string[] lines = Composers.ReadBack(message).TextBody!.Split('\n');

        Assert.Contains(lines, line => line.Contains("Bcc: thief@example.net <script>", StringComparison.Ordinal));
        Assert.DoesNotContain(lines, line => line.StartsWith("Bcc", StringComparison.Ordinal));
    }

    [Fact]
    public void The_link_for_stopping_holds_no_quote_and_no_line_break()
    {
        Message message = SampleMessages.One with { Region = Hostile };
        string link = Composers.ReadBack(message).Headers[HeaderId.ListUnsubscribe]!;

        Assert.StartsWith("<mailto:operator@example.org?subject=unsubscribe%20Common%20Bcc%3A%20", link, StringComparison.Ordinal);
        Assert.Equal(1, link.Count(each => each == '>'));
    }

    [Fact]
    public void Half_a_character_is_replaced_rather_than_sent_broken() =>
        Assert.Contains("Com\uFFFDmon", Composers.ReadBack(SampleMessages.One with { Notices = [SampleMessages.PreEmergent with { SiteName = "Com\uD83Cmon" }] }).TextBody, StringComparison.Ordinal);

    [Theory]
    [InlineData("adviser@example.org\r\nBcc: thief@example.net")]
    [InlineData("adviser@example.org, thief@example.net")]
    [InlineData("Thief <thief@example.net>")]
    [InlineData("adviser@example.org> SIZE=1\r\nRCPT TO:<thief@example.net")]
    public void An_address_that_is_more_than_one_address_makes_no_mail(string address)
    {
        Assert.Throws<ArgumentException>(() => Composers.Make().Compose(SampleMessages.One with { Address = address }, SampleMessages.QueuedAt));
        Assert.Throws<ArgumentException>(() => Composers.Make().Compose(SampleMessages.One with { OperatorAddress = address }, SampleMessages.QueuedAt));
    }

    [Theory]
    [InlineData("one@example.org\r\nBcc: thief@example.net")]
    [InlineData("one@example.org> <two@example.org")]
    [InlineData("no id at all")]
    public void A_message_id_that_is_more_than_one_makes_no_mail(string id) =>
        Assert.Throws<ArgumentException>(() => Composers.Make().Compose(SampleMessages.One with { MessageId = id }, SampleMessages.QueuedAt));

    private static Bulletin PoisonedBulletin()
    {
        BulletinLine[] lines = [new(Hostile, Hostile)];
        return new Bulletin([new BulletinSite { Name = Hostile, Open = lines, Nearing = lines, Waits = lines, Always = [Hostile], Care = lines, Done = lines }], lines, [Hostile]);
    }

    private static Notice Poison() => new()
    {
        Key = new("north-common", "spring-pre-emergent", 2026, NoticeKind.Opened),
        Day = new(2026, 4, 13),
        Since = new(2026, 4, 12),
        SiteName = Hostile,
        TreatmentName = Hostile,
        Headline = Hostile,
        Reason = Hostile,
        Figures = [new(Hostile, Hostile, Hostile)],
        ExpectedEnd = Hostile,
        Do = [Hostile],
        DoNot = [Hostile],
        Choices = [Hostile],
        Cautions = [Hostile],
        DataRemarks = [Hostile],
    };
}
