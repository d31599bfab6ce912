using SkiaSharp;
using Xunit;

namespace GddWatch.Tests.Commands;

public sealed class MailLikenessTests
{
    [Fact]
    public void A_picture_with_another_letter_or_a_line_one_pixel_off_is_another_one_and_other_shades_of_an_edge_are_not()
    {
        byte[] picture = Drawn("50", 100, 0);
        Assert.Null(MailLikeness.PictureDifference(picture, Drawn("50", 100, 40)));
        Assert.NotNull(MailLikeness.PictureDifference(picture, Drawn("50", 101, 0)));
        Assert.NotNull(MailLikeness.PictureDifference(picture, Drawn("5055", 100, 0)));
    }

    [Fact]
    public void A_mail_with_another_word_is_another_one()
    {
        byte[] mail = "Subject: Soil\r\n\r\nIt opens on Monday.\r\n"u8.ToArray();
        Assert.Null(MailLikeness.Difference(mail, [.. mail]));
        Assert.Contains("Tuesday", MailLikeness.Difference(mail, "Subject: Soil\r\n\r\nIt opens on Tuesday.\r\n"u8.ToArray()), StringComparison.Ordinal);
    }

    private static byte[] Drawn(string text, float lineAt, byte edge)
    {
        using var bitmap = new SKBitmap(200, 150);
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(SKColors.White);
        using var ink = new SKPaint { Color = SKColors.Black };
        using var faint = new SKPaint { Color = new SKColor((byte)(255 - edge), (byte)(255 - edge), (byte)(255 - edge)) };
        canvas.DrawRect(0, lineAt - 1, 200, 3, faint);
        canvas.DrawRect(0, lineAt, 200, 1, ink);
        for (int i = 0; i < text.Length; i++) canvas.DrawRect(10 + (12 * i), 20, 8, 14, ink);
        using SKData png = bitmap.Encode(SKEncodedImageFormat.Png, 90);
        return png.ToArray();
    }
}
