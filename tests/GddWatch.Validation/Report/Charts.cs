using ScottPlot;
using ScottPlot.Plottables;

namespace GddWatch.Validation.Report;

/// <summary>The report's pictures, as PNG of twice the shown size.</summary>
internal static class Charts
{
    private const int WidthPixels = 1900;
    private const int HeightPixels = 840;
    private static readonly string[] Months = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
    private static readonly Color Ink = Color.FromHex("#22292f");
    private static readonly Color Estimate = Color.FromHex("#0b7a53");
    private static readonly Color[] Lines =
        [Estimate, Color.FromHex("#c2571a"), Color.FromHex("#3566b0"), Color.FromHex("#8a4fa3"), Color.FromHex("#7d868c"), Color.FromHex("#b3922b")];

    /// <summary>DejaVu Sans is asked for by name, for what the plotting library would pick may not be there.</summary>
    public static void ChooseFont() => Fonts.Default = "DejaVu Sans";

    /// <summary>One line a series over the twelve months.</summary>
    public static byte[] ByMonth(string title, string axis, IReadOnlyList<(string Name, double[] Values)> series, double? guide = null)
    {
        Plot plot = NewPlot(title, axis);
        double[] months = [.. Enumerable.Range(0, 12).Select(month => (double)month)];
        for (int n = 0; n < series.Count; n++)
        {
            Scatter line = plot.Add.Scatter(months, series[n].Values, Lines[n % Lines.Length]);
            line.LegendText = series[n].Name;
            line.LineWidth = n == 0 ? 3 : 2;
            line.MarkerSize = 7;
        }

        if (guide is { } at)
        {
            HorizontalLine across = plot.Add.HorizontalLine(at, 1.5f, Ink, LinePattern.Dashed);
            across.ExcludeFromLegend = true;
        }

        plot.Axes.Bottom.SetTicks(months, Months);
        plot.Axes.SetLimitsX(-0.4, 11.4);
        return Png(plot);
    }

    /// <summary>A year of measured and estimated temperature with the 80 % range and, for comparison, the mean of the air.</summary>
    public static byte[] Year(string title, DateOnly first, double[] measured, double[] mean, double[] halfRange, double[] air)
    {
        Plot plot = NewPlot(title, "Soil temperature [°C]");
        double[] days = [.. Enumerable.Range(0, measured.Length).Select(day => first.AddDays(day).ToDateTime(TimeOnly.MinValue).ToOADate())];
        FillY range = plot.Add.FillY(days, [.. mean.Zip(halfRange, (m, h) => m - h)], [.. mean.Zip(halfRange, (m, h) => m + h)]);
        range.FillColor = Estimate.WithAlpha(0.18);
        range.LineWidth = 0;
        range.LegendText = "80 % range";
        Line(plot, days, air, Color.FromHex("#d08a4a"), 1.5f, "5-day air mean");
        Line(plot, days, mean, Estimate, 2.5f, "estimate");
        Line(plot, days, measured, Ink, 2, "measured");
        double[] starts = [.. Enumerable.Range(1, 12).Select(month => new DateTime(first.Year, month, 1).ToOADate())];
        plot.Axes.Bottom.SetTicks(starts, Months);
        plot.Axes.SetLimitsX(days[0], days[^1]);
        return Png(plot);
    }

    /// <summary>One horizontal bar a row, coloured by group.</summary>
    public static byte[] Bars(string title, string axis, IReadOnlyList<(string Name, double Value, int Group)> rows)
    {
        Plot plot = NewPlot(title, "");
        for (int n = 0; n < rows.Count; n++)
        {
            plot.Add.Bar(new Bar
            {
                Position = rows.Count - 1 - n,
                Value = rows[n].Value,
                Orientation = Orientation.Horizontal,
                FillColor = Lines[rows[n].Group],
                LineWidth = 0,
                Size = 0.72,
            });
        }

        plot.Axes.Left.SetTicks([.. rows.Select((_, n) => (double)(rows.Count - 1 - n))], [.. rows.Select(row => row.Name)]);
        plot.Axes.SetLimitsY(-0.8, rows.Count - 0.2);
        plot.Axes.Bottom.Label.Text = axis;
        return plot.GetImage(WidthPixels, Math.Max(HeightPixels, rows.Count * 40 + 200)).GetImageBytes(ImageFormat.Png);
    }

    /// <summary>Dates from the estimate against dates from the measurement, one point a station and season.</summary>
    public static byte[] Dates(string title, IReadOnlyList<(string Name, double[] Measured, double[] Estimated)> series)
    {
        Plot plot = NewPlot(title, "Day of the year, from the estimate");
        double lowest = series.Min(one => Math.Min(one.Measured.Min(), one.Estimated.Min())) - 5;
        double highest = series.Max(one => Math.Max(one.Measured.Max(), one.Estimated.Max())) + 5;
        plot.Add.Line(lowest, lowest, highest, highest).Color = Ink.WithAlpha(0.6);
        for (int n = 0; n < series.Count; n++)
        {
            Scatter points = plot.Add.ScatterPoints(series[n].Measured, series[n].Estimated, Lines[n % Lines.Length].WithAlpha(0.55));
            points.MarkerSize = 6;
            points.LegendText = series[n].Name;
        }

        plot.Axes.Bottom.Label.Text = "Day of the year, from the measurement";
        plot.Axes.SetLimits(lowest, highest, lowest, highest);
        LegendBelow(plot);
        return plot.GetImage(WidthPixels, WidthPixels * 7 / 10).GetImageBytes(ImageFormat.Png);
    }

    private static Plot NewPlot(string title, string axis)
    {
        Plot plot = new() { ScaleFactor = 2 };
        plot.Title(title, 15);
        plot.Axes.Left.Label.Text = axis;
        plot.Axes.Left.Label.Bold = false;
        plot.Axes.Left.Label.FontSize = 13;
        plot.Axes.Bottom.Label.Bold = false;
        plot.Axes.Bottom.Label.FontSize = 13;
        plot.Grid.MajorLineColor = Color.FromHex("#e3e8e5");
        return plot;
    }

    private static void Line(Plot plot, double[] days, double[] values, Color color, float width, string name)
    {
        Scatter line = plot.Add.ScatterLine(days, values, color);
        line.LineWidth = width;
        line.LegendText = name;
    }

    private static byte[] Png(Plot plot)
    {
        LegendBelow(plot);
        return plot.GetImage(WidthPixels, HeightPixels).GetImageBytes(ImageFormat.Png);
    }

    private static void LegendBelow(Plot plot)
    {
        plot.Legend.Orientation = Orientation.Horizontal;
        plot.Legend.OutlineWidth = 0;
        plot.Legend.ShadowColor = Colors.Transparent;
        plot.Legend.FontSize = 13;
        plot.ShowLegend(Edge.Bottom);
    }
}
