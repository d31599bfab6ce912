using System.Text;
using GddWatch.Agronomy.Changes;
using GddWatch.Notices.Composing;
using MimeKit;
using Xunit;

namespace GddWatch.Tests.Notices.Composing;

public sealed class MailComposerTests
{
    [Fact]
    public void The_committed_templates_have_no_fault() => Assert.Empty(Composers.Make().Faults);

    [Fact]
    public void A_mail_says_what_opened_where_since_when_why_and_what_to_do_in_both_parts()
    {
        MimeMessage mail = Composers.ReadBack(SampleMessages.One);
        string html = System.Net.WebUtility.HtmlDecode(mail.HtmlBody)!.Replace('\u00A0', ' ').Replace('\u2011', '-');

        Assert.Equal("Spring pre-emergent is open at North Common since Sunday 12 April", mail.Subject);
        Notice notice = SampleMessages.PreEmergent;
        string[] wanted =
        [
            "North Common", "Sunday 12 April 2026", notice.Reason, notice.ExpectedEnd, "50.4 °F ± 2.3 °F", "50 °F or more", "64 °F-days",
            .. notice.Do, .. notice.DoNot, .. notice.Choices, .. notice.Cautions, .. notice.DataRemarks,
            "timing, not a prescription", "label is the law", "Local codes, licences and watering rules come first", "invented for demonstration", "write to operator@example.org",
        ];
        Assert.All(wanted, words => Assert.Contains(words, html, StringComparison.Ordinal));
        Assert.All(wanted, words => Assert.Contains(words, mail.TextBody, StringComparison.Ordinal));
    }

    [Fact]
    public void What_a_notice_does_not_have_leaves_no_empty_heading()
    {
        MimeMessage mail = Composers.ReadBack(SampleMessages.Seeding with { Notices = [SampleMessages.GrubsClosing] });

        Assert.DoesNotContain("Do:", mail.TextBody, StringComparison.Ordinal);
        Assert.DoesNotContain("Choose first", mail.TextBody, StringComparison.Ordinal);
        Assert.DoesNotContain("Expected end", mail.TextBody, StringComparison.Ordinal);
        Assert.DoesNotContain("<h3>Do</h3>", mail.HtmlBody, StringComparison.Ordinal);
        Assert.DoesNotContain("<ul>\r\n    </ul>", mail.HtmlBody, StringComparison.Ordinal);
        Assert.Contains("Past its best since: Saturday 22 August 2026", mail.TextBody, StringComparison.Ordinal);
    }

    [Fact]
    public void A_window_found_open_at_the_first_look_is_not_told_as_a_change()
    {
        MimeMessage mail = Composers.ReadBack(SampleMessages.Seeding);

        Assert.Contains("it had not been told before", mail.TextBody, StringComparison.Ordinal);
        Assert.DoesNotContain("had not been told before", Composers.ReadBack(SampleMessages.One).TextBody, StringComparison.Ordinal);
    }

    [Fact]
    public void Several_notices_come_with_a_list_on_top_and_a_subject_that_names_three()
    {
        Notice grubs = SampleMessages.GrubsClosing;
        Message message = SampleMessages.Together with
        {
            Notices = [.. SampleMessages.Together.Notices, grubs with { SiteName = "East Bank" }, grubs with { SiteName = "West Bank" }],
        };

        MimeMessage mail = Composers.ReadBack(message);

        Assert.Equal(
            "4 windows changed: Mill Green: Overseeding open, South Field: Grub preventive past its best, East Bank: Grub preventive past its best and 1 more", mail.Subject);
        Assert.Contains("2. Past its best: Grub preventive at South Field is past its best since Saturday 22 August", mail.TextBody, StringComparison.Ordinal);
        Assert.Equal(5, mail.HtmlBody!.Split("<div class=\"sheet\">").Length - 1);
    }

    [Fact]
    public void Word_to_the_operator_has_its_own_mail()
    {
        MimeMessage mail = Composers.ReadBack(SampleMessages.ForOperator);

        Assert.Equal("Alder Reach service: 2 things need your attention", mail.Subject);
        Assert.All(SampleMessages.ForOperator.OperatorWords, words => Assert.Contains(words, mail.TextBody, StringComparison.Ordinal));
        Assert.Contains("550 5.1.1 No such user", mail.HtmlBody, StringComparison.Ordinal);
        Assert.Null(mail.Headers[HeaderId.ListUnsubscribe]);
    }

    [Fact]
    public void Every_kind_of_notice_has_its_label_and_its_words_before_the_date()
    {
        foreach (NoticeKind kind in Enum.GetValues<NoticeKind>())
        {
            Notice notice = SampleMessages.PreEmergent with { Key = SampleMessages.PreEmergent.Key with { Kind = kind } };
            MimeMessage mail = Composers.ReadBack(SampleMessages.One with { Notices = [notice] });

            Assert.Contains($"class=\"label {NoticeKinds.Word(kind)}\"", mail.HtmlBody, StringComparison.Ordinal);
            Assert.Contains(kind is NoticeKind.HeadsUp or NoticeKind.Bulletin ? "As of: Sunday 12 April 2026" : "ince: Sunday 12 April 2026", mail.TextBody, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void The_html_part_asks_nothing_of_the_network_and_knows_dark_and_narrow_screens()
    {
        string html = Composers.ReadBack(SampleMessages.Together).HtmlBody!;

        Assert.DoesNotContain("http", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("src=", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("url(", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("<meta name=\"color-scheme\" content=\"light dark\">", html, StringComparison.Ordinal);
        Assert.Contains("prefers-color-scheme: dark", html, StringComparison.Ordinal);
        Assert.Contains("max-width: 600px", html, StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_message_gives_the_same_bytes_from_two_composers()
    {
        byte[] first = Composers.BytesOf(Composers.Make().Compose(SampleMessages.Together, SampleMessages.QueuedAt));
        byte[] second = Composers.BytesOf(Composers.Make(TemplatesFolder.Committed).Compose(SampleMessages.Together, SampleMessages.QueuedAt));

        Assert.Equal(first, second);
        Assert.NotEqual(first, Composers.BytesOf(Composers.Make().Compose(SampleMessages.Together with { MessageId = "other@example.org" }, SampleMessages.QueuedAt)));
    }

    [Fact]
    public void The_mail_has_two_alternatives_in_quoted_printable_utf_8_with_short_lines()
    {
        Message message = SampleMessages.One with { Notices = [SampleMessages.PreEmergent with { Reason = new string('é', 2000) }] };
        MimeMessage mail = Composers.ReadBack(message);

        MultipartAlternative body = Assert.IsType<MultipartAlternative>(mail.Body);
        Assert.Equal(["text/plain", "text/html"], body.Select(part => part.ContentType.MimeType));
        Assert.All(body.OfType<TextPart>(), part => Assert.Equal(ContentEncoding.QuotedPrintable, part.ContentTransferEncoding));
        Assert.All(body.OfType<TextPart>(), part => Assert.Equal("utf-8", part.ContentType.Charset));
        Assert.Contains(new string('é', 2000), mail.TextBody, StringComparison.Ordinal);
        // RFC 5322, section 2.1.1 (MEMORY): lines of at most 78 characters where possible, ended by CR LF.
        Assert.All(Composers.RawOf(message).Split("\r\n"), line => Assert.True(line.Length <= 78 && !line.Contains('\n', StringComparison.Ordinal), line));
    }

    [Fact]
    public void The_headers_tell_who_when_and_that_a_machine_wrote_it()
    {
        MimeMessage mail = Composers.ReadBack(SampleMessages.One);

        Assert.Equal("windows@example.org", Assert.Single(mail.From.Mailboxes).Address);
        Assert.Equal("Alder Reach", Assert.Single(mail.From.Mailboxes).Name);
        Assert.Equal("adviser@example.org", Assert.Single(mail.To.Mailboxes).Address);
        Assert.Equal("Ada Väinölä", Assert.Single(mail.To.Mailboxes).Name);
        Assert.Equal("operator@example.org", Assert.Single(mail.ReplyTo.Mailboxes).Address);
        Assert.Equal(SampleMessages.One.MessageId, mail.MessageId);
        Assert.Equal(SampleMessages.QueuedAt, mail.Date);
        Assert.Equal(SampleMessages.QueuedAt.Offset, mail.Date.Offset);
        Assert.Equal("auto-generated", mail.Headers["Auto-Submitted"]);
        Assert.Equal("<alder-reach.example.org>", mail.Headers[HeaderId.ListId]);
        Assert.Equal("<mailto:operator@example.org?subject=unsubscribe%20Alder%20Reach>", mail.Headers[HeaderId.ListUnsubscribe]);
    }

    [Fact]
    public void A_long_subject_beyond_ascii_comes_through_whole()
    {
        string headline = string.Join(' ', Enumerable.Repeat("Nachsaat öffnet in Grünwiesen", 12));
        Message message = SampleMessages.One with { Notices = [SampleMessages.PreEmergent with { Headline = headline }] };

        Assert.Equal(headline, Composers.ReadBack(message).Subject);
        Assert.True(Encoding.UTF8.GetBytes(Composers.RawOf(message).Split("\r\n\r\n")[0]).All(each => each < 128), "A header holds a byte beyond ASCII.");
    }

    [Fact]
    public void A_message_id_may_come_with_or_without_brackets() =>
        Assert.Equal(Composers.RawOf(SampleMessages.One).Split("boundary")[0], Composers.RawOf(SampleMessages.One with { MessageId = $"<{SampleMessages.One.MessageId}>" }).Split("boundary")[0]);

    [Theory]
    [InlineData("no address")]
    [InlineData("Name <adviser@example.org>")]
    [InlineData("adviser@example.org, other@example.org")]
    [InlineData("adviser@example.org\r\nBcc: other@example.org")]
    public void An_addressee_that_is_not_one_address_is_refused_with_what_would_be_accepted(string address)
    {
        ArgumentException e = Assert.Throws<ArgumentException>(() => Composers.Make().Compose(SampleMessages.One with { Address = address }, SampleMessages.QueuedAt));

        Assert.Contains("must be one mail address such as \"adviser@example.org\"", e.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("without-at")]
    [InlineData("a@b>\r\nBcc: <other@example.org")]
    public void A_message_id_that_is_not_one_is_refused(string id) =>
        Assert.Throws<ArgumentException>(() => Composers.Make().Compose(SampleMessages.One with { MessageId = id }, SampleMessages.QueuedAt));

    [Fact]
    public void Header_options_that_are_not_valid_are_all_told_at_once()
    {
        var options = new MailHeaderOptions { From = "nobody", ListId = "two words" };

        Assert.Equal(2, options.Validate().Count);
        Assert.Throws<ArgumentException>(() => new MailComposer(TemplatesFolder.Committed, options));
        Assert.Empty(Composers.Headers.Validate());
    }
}
