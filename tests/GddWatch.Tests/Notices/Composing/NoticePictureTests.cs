using System.Net;
using GddWatch.Agronomy.Changes;
using GddWatch.Notices.Composing;
using MimeKit;
using SkiaSharp;
using Xunit;

namespace GddWatch.Tests.Notices.Composing;

/// <summary>The small chart in the HTML part.</summary>
public sealed class NoticePictureTests
{
    [Fact]
    public void The_picture_stands_in_the_html_part_with_its_size_and_with_words_for_who_cannot_see_it()
    {
        MimeMessage mail = Composers.ReadBack(SampleMessages.WithPictureAndCalendar);
        string html = WebUtility.HtmlDecode(mail.HtmlBody)!;
        MimePart picture = Assert.Single(PicturesOf(mail));
        Assert.Contains($"src=\"cid:{picture.ContentId}\" width=\"520\" height=\"360\" alt=\"{SampleMessages.Chart.Words}\"", html, StringComparison.Ordinal);
        Assert.Contains("max-width: 520px; height: auto", html, StringComparison.Ordinal);
        Assert.Contains("Shaded: eight of ten earlier years.", html, StringComparison.Ordinal);
        Assert.Contains($"Against earlier years: {SampleMessages.Chart.Words}", mail.TextBody, StringComparison.Ordinal);
        Assert.DoesNotContain("http", html, StringComparison.OrdinalIgnoreCase);
        Assert.False(picture.IsAttachment);
    }

    [Fact]
    public void It_is_small_opaque_and_has_text_line_limit_and_range_on_it()
    {
        byte[] png = BytesOf(Assert.Single(PicturesOf(Composers.ReadBack(SampleMessages.WithPictureAndCalendar))));
        Assert.InRange(png.Length, 5_000, 40_000);
        using SKBitmap picture = SKBitmap.Decode(png);
        Assert.Equal((780, 540), (picture.Width, picture.Height));
        SKColor[] pixels = picture.Pixels;
        Assert.All(pixels, pixel => Assert.Equal(255, pixel.Alpha));
        // The dark text of the title, above the plot; without a font it would be white there.
        Assert.InRange(pixels.Take(780 * 30).Count(IsDark), 200, 20_000);
        Assert.InRange(pixels.Count(pixel => IsNear(pixel, 0x2c, 0x5f, 0x8a)), 500, 20_000);
        Assert.InRange(pixels.Count(pixel => IsNear(pixel, 0xa3, 0x3f, 0x2c)), 500, 20_000);
        Assert.InRange(pixels.Count(pixel => IsNear(pixel, 0xd9, 0xe2, 0xe9)), 20_000, 300_000);
    }

    [Fact]
    public void Without_earlier_years_there_is_no_range_and_no_word_of_one()
    {
        NoticeChart chart = SampleMessages.Chart with { Panels = [SampleMessages.Chart.Panels[0] with { Curve = SampleMessages.Chart.Panels[0].Curve with { Low = [], High = [] } }] };
        MimeMessage mail = Composers.ReadBack(SampleMessages.One with { Notices = [SampleMessages.PreEmergent with { Chart = chart }] });
        using SKBitmap picture = SKBitmap.Decode(BytesOf(Assert.Single(PicturesOf(mail))));
        Assert.Equal(270, picture.Height);
        Assert.InRange(picture.Pixels.Count(pixel => IsNear(pixel, 0xd9, 0xe2, 0xe9)), 0, 500);
        Assert.DoesNotContain("Shaded", mail.HtmlBody, StringComparison.Ordinal);
    }

    [Fact]
    public void The_days_on_which_a_window_is_likely_to_open_are_drawn_as_a_band_and_named()
    {
        NoticeChart chart = SampleMessages.Chart with { Panels = [SampleMessages.Chart.Panels[0]] };
        NoticeChart likely = chart with { LikelyFrom = chart.Today.AddDays(4), LikelyUntil = chart.Today.AddDays(12) };
        Assert.Equal(0, Amber(chart));
        Assert.InRange(Amber(likely), 5_000, 60_000);
        MimeMessage mail = Composers.ReadBack(SampleMessages.One with { Notices = [SampleMessages.PreEmergent with { Chart = likely }] });
        Assert.Contains("Upright band: the days on which it is likely to open.", mail.HtmlBody, StringComparison.Ordinal);

        // The band is see-through: its red lies well above its blue, as nowhere else in the picture.
        static int Amber(NoticeChart drawn)
        {
            using SKBitmap picture = SKBitmap.Decode(BytesOf(Assert.Single(PicturesOf(Composers.ReadBack(SampleMessages.One with { Notices = [SampleMessages.PreEmergent with { Chart = drawn }] })))));
            return picture.Pixels.Count(pixel => pixel.Red > 190 && pixel.Red - pixel.Blue is > 40 and < 120 && pixel.Green > 160);
        }
    }

    [Fact]
    public void Where_nothing_can_be_drawn_the_words_stand_alone()
    {
        var composer = new MailComposer(TemplatesFolder.Committed, Composers.Headers, withPictures: false);
        Assert.False(composer.HasPictures);
        MimeMessage mail = Composers.ReadBack(composer.Compose(SampleMessages.WithPictureAndCalendar, SampleMessages.QueuedAt));
        Assert.Empty(PicturesOf(mail));
        Assert.DoesNotContain("<img", mail.HtmlBody, StringComparison.Ordinal);
        Assert.DoesNotContain("Dashed", mail.HtmlBody, StringComparison.Ordinal);
        Assert.Contains("usual at this date are 43 to 52", WebUtility.HtmlDecode(mail.HtmlBody)!, StringComparison.Ordinal);
    }

    [Fact]
    public void A_mail_of_very_many_notices_has_twelve_pictures_and_the_words_of_all()
    {
        Notice notice = SampleMessages.WithPictureAndCalendar.Notices[0];
        MimeMessage mail = Composers.ReadBack(SampleMessages.One with { Notices = [.. Enumerable.Repeat(notice, 15)] });
        Assert.Equal(12, PicturesOf(mail).Length);
        Assert.Equal(12, mail.HtmlBody!.Split("<img").Length - 1);
        Assert.Equal(15, mail.TextBody!.Split("Against earlier years").Length - 1);
    }

    [Fact]
    public void Words_of_a_chart_cannot_leave_their_attribute()
    {
        NoticeChart chart = SampleMessages.Chart with { Words = "\"><script>alert(1)</script>\r\n<img src=x>" };
        string html = Composers.ReadBack(SampleMessages.One with { Notices = [SampleMessages.PreEmergent with { Chart = chart }] }).HtmlBody!;
        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(1, html.Split("<img").Length - 1);
        Assert.Contains("alt=\"&quot;&gt;&lt;script&gt;", html, StringComparison.Ordinal);
    }

    private static MimePart[] PicturesOf(MimeMessage mail) => [.. mail.BodyParts.OfType<MimePart>().Where(part => part.ContentType.MimeType == "image/png")];

    private static byte[] BytesOf(MimePart part)
    {
        using var bytes = new MemoryStream();
        part.Content!.DecodeTo(bytes, TestContext.Current.CancellationToken);
        return bytes.ToArray();
    }

    private static bool IsDark(SKColor pixel) => pixel.Red < 100 && pixel.Green < 100 && pixel.Blue < 100;

    private static bool IsNear(SKColor pixel, int red, int green, int blue) => Math.Abs(pixel.Red - red) <= 8 && Math.Abs(pixel.Green - green) <= 8 && Math.Abs(pixel.Blue - blue) <= 8;
}
