using System.Text;
using GddWatch.Agronomy.Changes;
using Ical.Net;
using Ical.Net.CalendarComponents;
using MimeKit;
using Xunit;

namespace GddWatch.Tests.Notices.Composing;

/// <summary>The calendar that is attached to a mail, as a calendar program reads it. RFC 5545 and RFC 5546 (MEMORY, but for the length of lines: SEEN).</summary>
public sealed class CalendarTests
{
    private const string Hostile = "Common\r\nEND:VEVENT\r\nBEGIN:VEVENT\r\nATTENDEE:mailto:thief@example.net\nX-EVIL:1;a,b\\n\u2028\u0085\u202Eeveil 🌱🌱🌱🌱🌱🌱🌱🌱🌱🌱🌱🌱🌱🌱🌱🌱🌱🌱🌱🌱🌱🌱🌱🌱 \"q\" ÄÖÜäöü漢字漢字漢字漢字";

    [Fact]
    public void The_window_is_attached_as_a_calendar_with_one_entry_of_whole_days()
    {
        MimeMessage mail = Composers.ReadBack(SampleMessages.WithPictureAndCalendar);
        MimePart part = AttachmentOf(mail);
        Assert.Equal("text/calendar", part.ContentType.MimeType);
        Assert.Equal("utf-8", part.ContentType.Charset);
        Assert.Equal("PUBLISH", part.ContentType.Parameters["method"]);
        Assert.Equal("window.ics", part.FileName);
        Assert.True(part.IsAttachment);

        Calendar calendar = Calendar.Load(TextOf(mail))!;
        Assert.Equal("PUBLISH", calendar.Method);
        Assert.Equal("2.0", calendar.Version);
        CalendarEvent window = Assert.Single(calendar.Events);
        Assert.Equal("north-common.spring-pre-emergent.2026@example.org", window.Uid);
        Assert.Equal(2, window.Sequence);
        Assert.True(window.IsAllDay);
        Assert.Equal(new DateOnly(2026, 4, 12), window.DtStart!.Date);
        Assert.Equal(new DateOnly(2026, 5, 2), window.DtEnd!.Date);
        Assert.Equal(SampleMessages.QueuedAt.UtcDateTime, window.DtStamp!.AsUtc);
        Assert.Equal("North Common: Spring pre-emergent", window.Summary);
        Assert.Equal("CONFIRMED", window.Status);
        Assert.Equal("TRANSPARENT", window.Transparency);
        Assert.Equal(["Lawn", "Spring pre-emergent"], window.Categories);
        Notice notice = SampleMessages.PreEmergent;
        Assert.All(
            [notice.Reason, SampleMessages.Entry.EndWords, .. notice.Do, .. notice.DoNot, .. notice.Choices, .. notice.Cautions, .. notice.DataRemarks, "label is the law", "invented"],
            words => Assert.Contains(words, window.Description, StringComparison.Ordinal));
    }

    [Fact]
    public void Mail_alternatives_stay_what_a_mail_program_shows_beside_it()
    {
        MimeMessage mail = Composers.ReadBack(SampleMessages.WithPictureAndCalendar);
        Multipart body = Assert.IsType<Multipart>(mail.Body);
        Assert.Equal(["multipart/alternative", "text/calendar"], body.Select(part => part.ContentType.MimeType));
        Assert.NotNull(mail.TextBody);
        Assert.NotNull(mail.HtmlBody);
    }

    [Fact]
    public void A_correction_moves_the_entry_by_its_name_and_a_higher_number_and_a_withdrawal_cancels_it()
    {
        CalendarEvent first = Assert.Single(EventsOf(WithEntry(SampleMessages.Entry)));
        CalendarEvent moved = Assert.Single(EventsOf(WithEntry(SampleMessages.Entry with { Sequence = 5, First = new(2026, 4, 20) }, NoticeKind.Corrected)));
        CalendarEvent withdrawn = Assert.Single(EventsOf(WithEntry(SampleMessages.Entry with { Sequence = 6, IsWithdrawn = true }, NoticeKind.Held)));
        Assert.Equal(first.Uid, moved.Uid);
        Assert.Equal(first.Uid, withdrawn.Uid);
        Assert.Equal([2, 5, 6], new[] { first, moved, withdrawn }.Select(each => each.Sequence));
        Assert.Equal(new DateOnly(2026, 4, 20), moved.DtStart!.Date);
        Assert.Equal("CANCELLED", withdrawn.Status);
        Assert.EndsWith("(withdrawn)", withdrawn.Summary, StringComparison.Ordinal);
    }

    [Fact]
    public void The_name_of_the_entry_is_the_same_for_every_reader()
    {
        Message other = SampleMessages.WithPictureAndCalendar with { Address = "other@example.net", MessageId = "other@example.org" };
        Assert.Equal(EventsOf(SampleMessages.WithPictureAndCalendar).Single().Uid, EventsOf(other).Single().Uid);
    }

    [Fact]
    public void Several_notices_in_a_mail_are_several_entries_of_one_calendar()
    {
        Message message = SampleMessages.Together with { Notices = [SampleMessages.Overseeding with { Entry = SampleMessages.Entry }, SampleMessages.GrubsClosing with { Entry = SampleMessages.Entry }] };
        CalendarEvent[] windows = EventsOf(message);
        Assert.Equal(["mill-green.overseeding.2026@example.org", "south-field.grub-preventive.2026@example.org"], windows.Select(each => each.Uid).Order(StringComparer.Ordinal));
        Assert.Contains(windows, each => each.Summary == "South Field: Grub preventive (past its best)");
    }

    [Fact]
    public void A_message_queued_before_there_were_entries_has_no_calendar() =>
        Assert.DoesNotContain(Composers.ReadBack(SampleMessages.One).BodyParts, part => part.ContentType.MimeType == "text/calendar");

    [Fact]
    public void Hostile_names_and_sentences_add_no_line_no_entry_and_no_property_and_come_back_as_they_are_read_elsewhere()
    {
        Notice poison = SampleMessages.PreEmergent with
        {
            Key = new(Hostile, Hostile, 2026, NoticeKind.Opened),
            SiteName = Hostile,
            TreatmentName = Hostile,
            Headline = Hostile,
            Reason = Hostile,
            Do = [Hostile],
            DoNot = [Hostile],
            Choices = [Hostile],
            Cautions = [Hostile, Hostile, Hostile],
            DataRemarks = [Hostile],
            Entry = SampleMessages.Entry with { EndWords = Hostile },
        };
        string text = TextOf(Composers.ReadBack(SampleMessages.One with { Remark = Hostile, Notices = [poison] }));
        string tame = TextOf(Composers.ReadBack(SampleMessages.WithPictureAndCalendar));

        CalendarEvent window = Assert.Single(Calendar.Load(text)!.Events);
        Assert.Equal(PropertiesIn(tame), PropertiesIn(text));
        Assert.Empty(window.Attendees);
        Assert.Contains("Common END:VEVENT BEGIN:VEVENT ATTENDEE:mailto:thief@example.net X-EVIL:1;a,b\\n eveil 🌱", window.Summary, StringComparison.Ordinal);
        Assert.Contains("🌱🌱 \"q\" ÄÖÜäöü漢字", window.Description, StringComparison.Ordinal);
        Assert.DoesNotContain('\uFFFD', text);
        Assert.DoesNotContain('\u202E', text);
    }

    [Theory]
    [InlineData("")]
    [InlineData("🌱")]
    [InlineData("é")]
    [InlineData("漢")]
    public void No_line_is_longer_than_75_octets_and_each_ends_as_the_standard_wants(string filler)
    {
        string words = string.Concat(Enumerable.Repeat($"a{filler}, ", 300));
        byte[] octets = OctetsOf(Composers.ReadBack(SampleMessages.One with { Notices = [SampleMessages.PreEmergent with { Reason = words, Entry = SampleMessages.Entry }] }));
        string text = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true).GetString(octets);
        string[] lines = text.Split("\r\n");
        Assert.EndsWith("END:VCALENDAR\r\n", text, StringComparison.Ordinal);
        Assert.All(lines, line => Assert.True(Encoding.UTF8.GetByteCount(line) <= 75 && !line.Contains('\n', StringComparison.Ordinal) && !line.Contains('\r', StringComparison.Ordinal), line));
        Assert.Contains(words.TrimEnd(), Calendar.Load(text)!.Events.Single().Description, StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_message_gives_the_same_calendar_whenever_it_is_sent()
    {
        byte[] first = Composers.BytesOf(Composers.Make().Compose(SampleMessages.WithPictureAndCalendar, SampleMessages.QueuedAt));
        byte[] second = Composers.BytesOf(Composers.Make(TemplatesFolder.Committed).Compose(SampleMessages.WithPictureAndCalendar, SampleMessages.QueuedAt));
        Assert.Equal(first, second);
    }

    private static Message WithEntry(CalendarEntry entry, NoticeKind kind = NoticeKind.Opened) => SampleMessages.One with
    {
        Notices = [SampleMessages.PreEmergent with { Key = SampleMessages.PreEmergent.Key with { Kind = kind }, Entry = entry }],
    };

    private static CalendarEvent[] EventsOf(Message message) => [.. Calendar.Load(TextOf(Composers.ReadBack(message)))!.Events];

    private static MimePart AttachmentOf(MimeMessage mail) => Assert.Single(mail.BodyParts.OfType<MimePart>(), part => part.ContentType.MimeType == "text/calendar");

    private static string TextOf(MimeMessage mail) => Encoding.UTF8.GetString(OctetsOf(mail));

    private static byte[] OctetsOf(MimeMessage mail)
    {
        using var octets = new MemoryStream();
        AttachmentOf(mail).Content!.DecodeTo(octets, TestContext.Current.CancellationToken);
        return octets.ToArray();
    }

    /// <summary>The names of the properties in order, long lines put together again by the standard's rule.</summary>
    private static string[] PropertiesIn(string text) => [.. text.Replace("\r\n ", "", StringComparison.Ordinal).Split("\r\n").Select(line => line.Split(':', ';')[0])];
}
