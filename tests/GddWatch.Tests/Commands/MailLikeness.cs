using System.Globalization;
using System.Text;
using MimeKit;
using SkiaSharp;
using Xunit;

namespace GddWatch.Tests.Commands;

/// <summary>
/// Whether mails are the same: all words, headers and calendar entries to the byte, pictures to the eye. On some machines the drawing library gives the edges of a picture other shades from one
/// drawing to the next, seen in about one of five repeated mails there and never on others; the data that are drawn are in the mail's words.
/// </summary>
internal static class MailLikeness
{
    /// <summary>The share of pixels that may differ to the eye: less than one letter of a chart has.</summary>
    private const double MostPixels = 0.002;

    /// <summary>A difference of a colour that is seen [of 255].</summary>
    private const int Seen = 48;

    /// <summary>Fails where the folders do not hold the same mails.</summary>
    public static void AssertSame(SortedDictionary<string, byte[]> expected, SortedDictionary<string, byte[]> actual)
    {
        Assert.Equal(expected.Keys, actual.Keys);
        string[] differences = [.. expected.Where(mail => Difference(mail.Value, actual[mail.Key]) is not null).Select(mail => $"{mail.Key}: {Difference(mail.Value, actual[mail.Key])}")];
        Assert.True(differences.Length == 0, string.Join('\n', differences));
    }

    /// <summary>What differs between two mails, or two other files of a mail folder; null where nothing does.</summary>
    public static string? Difference(byte[] one, byte[] other)
    {
        if (one.AsSpan().SequenceEqual(other)) return null;
        (string[] lines, List<byte[]> pictures) = Parts(one);
        (string[] otherLines, List<byte[]> otherPictures) = Parts(other);
        int differs = Enumerable.Range(0, Math.Max(lines.Length, otherLines.Length)).FirstOrDefault(i => lines.ElementAtOrDefault(i) != otherLines.ElementAtOrDefault(i), -1);
        if (differs >= 0) return $"\"{lines.ElementAtOrDefault(differs)}\" and \"{otherLines.ElementAtOrDefault(differs)}\"";
        if (pictures.Count != otherPictures.Count) return $"{pictures.Count} pictures and {otherPictures.Count}";
        return pictures.Zip(otherPictures, PictureDifference).FirstOrDefault(difference => difference is not null);
    }

    /// <summary>What differs between two pictures to the eye; null where nothing does.</summary>
    public static string? PictureDifference(byte[] one, byte[] other)
    {
        using var first = SKBitmap.Decode(one);
        using var second = SKBitmap.Decode(other);
        if (first.Width != second.Width || first.Height != second.Height) return $"a picture of {first.Width} x {first.Height} pixels and one of {second.Width} x {second.Height}";
        int seen = first.Pixels.Zip(second.Pixels).Count(pair => Math.Abs(pair.First.Red - pair.Second.Red) > Seen || Math.Abs(pair.First.Green - pair.Second.Green) > Seen || Math.Abs(pair.First.Blue - pair.Second.Blue) > Seen);
        return seen <= MostPixels * first.Width * first.Height ? null : string.Create(CultureInfo.InvariantCulture, $"{seen} pixels of {first.Width * first.Height} of a picture");
    }

    private static (string[] Lines, List<byte[]> Pictures) Parts(byte[] bytes)
    {
        var mail = MimeMessage.Load(new MemoryStream(bytes));
        var pictures = new List<byte[]>();
        foreach (MimePart picture in mail.BodyParts.OfType<MimePart>().Where(part => part.ContentType.IsMimeType("image", "png") && part.Content is not null))
        {
            using var content = new MemoryStream();
            picture.Content!.DecodeTo(content, TestContext.Current.CancellationToken);
            pictures.Add(content.ToArray());
            picture.Content = new MimeContent(new MemoryStream());
        }

        using var rest = new MemoryStream();
        mail.WriteTo(rest, TestContext.Current.CancellationToken);
        return (Encoding.UTF8.GetString(rest.ToArray()).Split('\n'), pictures);
    }
}
