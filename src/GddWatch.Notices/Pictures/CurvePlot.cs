using GddWatch.Agronomy.Changes;
using ScottPlot;
using ScottPlot.Plottables;
using SkiaSharp;

namespace GddWatch.Notices.Pictures;

/// <summary>
/// The one way in which a curve of a mail is drawn: this year's line over the range of earlier years, on a ground of its own, so that it reads the same in a light and in a dark mail. The same
/// data give the same picture.
/// </summary>
internal static class CurvePlot
{
    /// <summary>The colour of text.</summary>
    public static readonly Color Ink = Color.FromHex("#24272b");

    /// <summary>The colour of axes and marks.</summary>
    public static readonly Color Faint = Color.FromHex("#5b6168");

    /// <summary>A plot with the curve; day 0 is the curve's first day.</summary>
    /// <param name="title">What is drawn, with its unit.</param>
    /// <param name="curve">The curve.</param>
    /// <param name="colour">The colour of the line, and paler of the range.</param>
    /// <param name="textSize">The size of all text [pixels].</param>
    public static Plot Of(string title, ChartCurve curve, Color colour, float textSize)
    {
        var plot = new Plot();
        PictureFont.Use(plot);
        plot.FigureBackground.Color = Colors.White;
        plot.Title(title, textSize);
        plot.Axes.Color(Faint);
        plot.Axes.Title.Label.ForeColor = Ink;
        plot.Axes.Title.Label.Bold = false;
        plot.Axes.Bottom.TickLabelStyle.FontSize = textSize;
        plot.Axes.Left.TickLabelStyle.FontSize = textSize;
        plot.HideGrid();
        if (curve.Low.Count == curve.Now.Count)
        {
            double[] days = [.. Enumerable.Range(0, curve.Now.Count).Select(each => (double)each)];
            FillY range = plot.Add.FillY(days, [.. curve.Low], [.. curve.High]);
            range.FillColor = colour.WithAlpha(0.18);
            range.LineWidth = 0;
        }

        (double Day, double Value)[] known = [.. curve.Now.Index().Where(each => each.Item is not null).Select(each => ((double)each.Index, each.Item!.Value))];
        Scatter line = plot.Add.ScatterLine(known.Select(each => each.Day).ToArray(), known.Select(each => each.Value).ToArray(), colour);
        line.LineWidth = 3;
        return plot;
    }

    /// <summary>Names some days below a plot.</summary>
    public static void NameDays(Plot plot, DateOnly firstDay, IEnumerable<int> days)
    {
        int[] named = [.. days];
        plot.Axes.Bottom.SetTicks(
            [.. named.Select(each => (double)each)],
            [.. named.Select(each => firstDay.AddDays(each).ToString("d MMM", System.Globalization.CultureInfo.InvariantCulture))]);
    }

    /// <summary>Several plots as one PNG. It has no transparency, 52 shades of each colour and unfiltered lines: under half of what the drawing library's own PNG takes, and the same to the eye.</summary>
    public static byte[] Png(IReadOnlyList<Plot> plots, IMultiplotLayout layout, int width, int height)
    {
        var all = new Multiplot();
        foreach (Plot plot in plots) all.AddPlot(plot);
        // A new one comes with an empty plot of its own.
        all.RemovePlot(all.GetPlot(0));
        all.Layout = layout;
        using var bitmap = new SKBitmap(new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque));
        using (var canvas = new SKCanvas(bitmap))
        {
            // A new bitmap holds whatever its memory held before, and between the plots nothing is drawn.
            canvas.Clear(SKColors.White);
            all.Render(canvas, new PixelRect(0, width, height, 0));
        }

        Span<byte> pixels = bitmap.GetPixelSpan();
        for (int i = 0; i < pixels.Length; i++) pixels[i] = Shade(pixels[i]);
        using SKPixmap? picture = bitmap.PeekPixels();
        using SKData? png = picture?.Encode(new SKPngEncoderOptions(SKPngEncoderFilterFlags.None, 6));
        return png?.ToArray() ?? throw new InvalidOperationException("The picture could not be written as PNG.");
    }

    /// <summary>The nearest of 52 shades, black and white among them.</summary>
    private static byte Shade(byte value) => (byte)((value + 2) / 5 * 5);
}
