using GddWatch.Notices.Pictures;
using ScottPlot;
using SkiaSharp;
using Xunit;

namespace GddWatch.Tests.Notices.Pictures;

public sealed class PictureFontTests
{
    [Fact]
    public void The_font_lies_inside_the_program_and_is_the_one_that_is_drawn_with()
    {
        Assert.True(PictureFont.IsThere);
        // Not ours to dispose: every picture of the process is drawn with this one.
        SKTypeface drawnWith = Fonts.GetTypeface(PictureFont.Name, bold: false, italic: false);
        Assert.Equal("DejaVu Sans", drawnWith.FamilyName);
        // Not the machine's own font of that name: the resolver of the program is asked first.
        Assert.StartsWith(typeof(PictureFont).FullName!, Fonts.FontResolvers[0].GetType().FullName, StringComparison.Ordinal);
    }

    [Fact]
    public void Text_leaves_ink_on_a_picture()
    {
        Assert.InRange(InkOf("50 °F ± 2"), 100, 20_000);
        Assert.Equal(0, InkOf(" "));
    }

    private static int InkOf(string title)
    {
        var plot = new Plot();
        PictureFont.Use(plot);
        plot.HideAxesAndGrid();
        plot.Axes.Title.IsVisible = true;
        plot.Title(title, 30);
        using SKBitmap picture = SKBitmap.Decode(plot.GetImageBytes(300, 200, ImageFormat.Png));
        return picture.Pixels.Count(pixel => pixel.Red < 128);
    }
}
