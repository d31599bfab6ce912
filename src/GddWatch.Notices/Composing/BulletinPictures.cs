using GddWatch.Agronomy.Changes;
using GddWatch.Notices.Pictures;
using ScottPlot;
using ScottPlot.Plottables;

namespace GddWatch.Notices.Composing;

/// <summary>Draws the small charts of a bulletin: this year's line over the range of earlier years. The same data give the same picture.</summary>
internal static class BulletinPictures
{
    private const int WidthPixels = 780;
    private const int HeightPixels = 270;
    private static readonly Color Ink = Color.FromHex("#24272b");
    private static readonly Color Faint = Color.FromHex("#5b6168");
    private static readonly Color Line = Color.FromHex("#2c5f8a");
    private static readonly Color Warmth = Color.FromHex("#a65a1f");

    /// <summary>The name of a site's picture inside the mail.</summary>
    public static string ContentId(int index) => $"chart-{index}@bulletin";

    /// <summary>The picture as PNG, twice as large as it is shown.</summary>
    public static byte[] Png(BulletinChart chart)
    {
        var both = new Multiplot();
        both.AddPlot(Draw(chart.Soil, chart.LastDay, chart.SoilUnit == "°F" ? "Soil at 2 inches [°F]" : "Soil at 5 cm [°C]", Line));
        both.AddPlot(Draw(chart.Heat, chart.LastDay, chart.SoilUnit == "°F" ? "Heat, base 50 °F [°F-days]" : "Heat, base 10 °C [°C-days]", Warmth));
        // A new one comes with an empty plot of its own.
        both.RemovePlot(both.GetPlot(0));
        both.Layout = new ScottPlot.MultiplotLayouts.Columns();
        return both.Render(WidthPixels, HeightPixels).GetImageBytes(ImageFormat.Png);
    }

    private static Plot Draw(BulletinCurve curve, DateOnly lastDay, string title, Color colour)
    {
        var plot = new Plot();
        PictureFont.Use(plot);
        plot.FigureBackground.Color = Colors.White;
        plot.Title(title, 24);
        plot.Axes.Bottom.TickLabelStyle.FontSize = 22;
        plot.Axes.Left.TickLabelStyle.FontSize = 22;
        plot.Axes.Color(Faint);
        plot.Axes.Title.Label.ForeColor = Ink;
        plot.Axes.Title.Label.Bold = false;
        plot.HideGrid();
        double[] days = [.. Enumerable.Range(0, curve.Now.Count).Select(i => (double)(i - curve.Now.Count + 1))];
        if (curve.Low.Count == days.Length)
        {
            FillY range = plot.Add.FillY(days, [.. curve.Low], [.. curve.High]);
            range.FillColor = colour.WithAlpha(0.18);
            range.LineWidth = 0;
        }

        (double X, double Y)[] known = [.. days.Zip(curve.Now, (day, value) => (day, value ?? double.NaN)).Where(point => !double.IsNaN(point.Item2))];
        Scatter line = plot.Add.ScatterLine(known.Select(point => point.X).ToArray(), known.Select(point => point.Y).ToArray(), colour);
        line.LineWidth = 3;
        double[] weeks = [-56, -28, 0];
        plot.Axes.Bottom.SetTicks(weeks, [.. weeks.Select(each => lastDay.AddDays((int)each).ToString("d MMM", System.Globalization.CultureInfo.InvariantCulture))]);
        plot.Axes.SetLimitsX(days[0], 6);
        return plot;
    }
}
