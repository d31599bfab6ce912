using System.Globalization;
using GddWatch.Notices.Pictures;
using ScottPlot;
using ScottPlot.Plottables;

namespace GddWatch.Reports;

/// <summary>Draws the charts of a report, each as PNG of twice the size at which it is shown. The same data give the same picture.</summary>
internal sealed class ReportCharts(ChartTheme theme)
{
    private const int WidthPixels = 1640;
    private const int HeightPixels = 680;
    private const float FontSize = 13;

    /// <summary>The most series that one chart can tell apart.</summary>
    public static int MostSeries => ChartTheme.Marks.Count;

    /// <summary>Opening dates by year, a mark for each site, with fixed dates across.</summary>
    /// <param name="sites">Names, years and days of the season.</param>
    /// <param name="seen">For each of them years and days of the season by what was seen; may be empty.</param>
    /// <param name="fixedDates">Names and days of the season.</param>
    /// <param name="first">The date of day 0, for the ticks.</param>
    public byte[] DatesByYear(
        IReadOnlyList<(string Name, double[] Years, double[] Days)> sites, IReadOnlyList<(double[] Years, double[] Days)> seen, IReadOnlyList<(string Name, double Day)> fixedDates, DateOnly first)
    {
        Plot plot = NewPlot();
        for (int n = 0; n < sites.Count; n++)
        {
            Scatter marks = plot.Add.Scatter(sites[n].Years, sites[n].Days, theme.Series[n]);
            marks.LineWidth = 1;
            marks.LineColor = theme.Series[n].WithAlpha(0.45);
            marks.MarkerShape = ChartTheme.Marks[n];
            marks.MarkerSize = 9;
            marks.MarkerLineWidth = 2;
            marks.LegendText = sites[n].Name;
        }

        bool named = false;
        for (int n = 0; n < sites.Count; n++)
        {
            if (seen[n].Years.Length == 0) continue;
            Scatter stars = plot.Add.ScatterPoints(seen[n].Years, seen[n].Days, theme.Series[n]);
            stars.MarkerShape = MarkerShape.Asterisk;
            stars.MarkerSize = 13;
            stars.MarkerLineWidth = 2.5f;
            if (!named) stars.LegendText = "should have opened, by what was seen there";
            named = true;
        }

        for (int n = 0; n < fixedDates.Count; n++)
        {
            HorizontalLine across = plot.Add.HorizontalLine(fixedDates[n].Day, 2, theme.Ink, n == 0 ? LinePattern.Dashed : LinePattern.Dotted);
            across.LegendText = fixedDates[n].Name;
        }

        double[] years = [.. sites.SelectMany(site => site.Years)];
        double[] days = [.. sites.SelectMany(site => site.Days), .. seen.SelectMany(each => each.Days), .. fixedDates.Select(each => each.Day)];
        WholeYears(plot, years.Min(), years.Max());
        DateTicks(plot.Axes.Left, first, days.Min(), days.Max());
        plot.Axes.SetLimitsY(days.Min() - 6, days.Max() + 6);
        return Png(plot, HeightPixels, sites.Count + fixedDates.Count);
    }

    /// <summary>For each site a line from the earliest to the latest opening, thick where eight of ten lie, a mark at the median, and a fixed date across.</summary>
    public byte[] SpreadBySite(
        IReadOnlyList<(string Name, double Earliest, double? Early, double Median, double? Late, double Latest)> sites, IReadOnlyList<(string Name, double Day)> fixedDates, DateOnly first)
    {
        Plot plot = NewPlot();
        for (int n = 0; n < sites.Count; n++)
        {
            int y = sites.Count - 1 - n;
            Color colour = theme.Series[0];
            LinePlot whole = plot.Add.Line(sites[n].Earliest, y, sites[n].Latest, y);
            whole.Color = colour;
            whole.LineWidth = 2;
            if (sites[n] is { Early: { } early, Late: { } late })
            {
                LinePlot most = plot.Add.Line(early, y, late, y);
                most.Color = colour.WithAlpha(0.45);
                most.LineWidth = 12;
                most.MarkerSize = 0;
                if (n == 0) most.LegendText = "eight of ten seasons";
            }

            whole.MarkerSize = 0;
            if (n == 0) whole.LegendText = "earliest to latest";
            Scatter middle = plot.Add.ScatterPoints((double[])[sites[n].Median], (double[])[y], theme.Ink);
            middle.MarkerShape = MarkerShape.FilledDiamond;
            middle.MarkerSize = 11;
            if (n == 0) middle.LegendText = "median";
        }

        for (int n = 0; n < fixedDates.Count; n++)
        {
            VerticalLine across = plot.Add.VerticalLine(fixedDates[n].Day, 2, theme.Ink, n == 0 ? LinePattern.Dashed : LinePattern.Dotted);
            across.LegendText = fixedDates[n].Name;
        }

        plot.Axes.Left.SetTicks([.. sites.Select((_, n) => (double)(sites.Count - 1 - n))], [.. sites.Select(site => site.Name)]);
        plot.Axes.SetLimitsY(-0.7, sites.Count - 0.3);
        double lowest = Math.Min(sites.Min(site => site.Earliest), fixedDates.Select(each => each.Day).DefaultIfEmpty(double.MaxValue).Min());
        double highest = Math.Max(sites.Max(site => site.Latest), fixedDates.Select(each => each.Day).DefaultIfEmpty(double.MinValue).Max());
        DateTicks(plot.Axes.Bottom, first, lowest, highest);
        plot.Axes.SetLimitsX(lowest - 6, highest + 6);
        return Png(plot, Math.Min(1100, 300 + sites.Count * 70), 4);
    }

    /// <summary>By how many days openings move when a threshold is another: the mean as a line, the range over all seasons and sites as bars.</summary>
    public byte[] Sensitivity(string axis, double[] values, double[] meanDays, double[] least, double[] most, double inUse)
    {
        Plot plot = NewPlot();
        plot.Add.HorizontalLine(0, 1, theme.Faint).ExcludeFromLegend = true;
        VerticalLine now = plot.Add.VerticalLine(inUse, 2, theme.Ink, LinePattern.Dashed);
        now.LegendText = "as it is";
        for (int i = 0; i < values.Length; i++)
        {
            LinePlot bar = plot.Add.Line(values[i], least[i], values[i], most[i]);
            bar.Color = theme.Series[0].WithAlpha(0.45);
            bar.LineWidth = 6;
            bar.MarkerSize = 0;
            if (i == 0) bar.LegendText = "least to most";
        }

        Scatter line = plot.Add.Scatter(values, meanDays, theme.Series[0]);
        line.LineWidth = 2.5f;
        line.MarkerSize = 9;
        line.LegendText = "mean of all seasons and sites";
        plot.Axes.Bottom.Label.Text = axis;
        plot.Axes.Left.Label.Text = "days later (−: earlier)";
        plot.Axes.Bottom.SetTicks(values, [.. values.Select(value => value.ToString("0.#", CultureInfo.InvariantCulture))]);
        double step = values.Length > 1 ? Math.Abs(values[^1] - values[0]) / (values.Length - 1) : 1;
        plot.Axes.SetLimitsX(values.Min() - step / 2, values.Max() + step / 2);
        return Png(plot, HeightPixels - 120, 3);
    }

    /// <summary>The last year's line over the range of earlier years.</summary>
    public byte[] YearInRange(string axis, DateOnly first, IReadOnlyList<double> now, IReadOnlyList<double> low, IReadOnlyList<double> middle, IReadOnlyList<double> high, int colour)
    {
        Plot plot = NewPlot();
        int[] ranged = [.. Enumerable.Range(0, low.Count).Where(day => double.IsFinite(low[day]))];
        if (ranged.Length > 1)
        {
            FillY range = plot.Add.FillY([.. ranged.Select(day => (double)day)], [.. ranged.Select(day => low[day])], [.. ranged.Select(day => high[day])]);
            range.FillColor = theme.Series[colour].WithAlpha(0.22);
            range.LineWidth = 0;
            range.LegendText = "eight of ten earlier years";
            Scatter median = plot.Add.ScatterLine(ranged.Select(day => (double)day).ToArray(), ranged.Select(day => middle[day]).ToArray(), theme.Faint);
            median.LineWidth = 1.5f;
            median.LinePattern = LinePattern.Dashed;
            median.LegendText = "median of earlier years";
        }

        int[] known = [.. Enumerable.Range(0, now.Count).Where(day => double.IsFinite(now[day]))];
        Scatter line = plot.Add.ScatterLine(known.Select(day => (double)day).ToArray(), known.Select(day => now[day]).ToArray(), theme.Series[colour]);
        line.LineWidth = 2.5f;
        line.LegendText = first.AddDays(364).Year == first.Year ? $"{first.Year}" : $"{first.Year} to {first.Year + 1}";
        plot.Axes.Left.Label.Text = axis;
        DateTicks(plot.Axes.Bottom, first, 0, 364);
        plot.Axes.SetLimitsX(0, 364);
        return Png(plot, HeightPixels - 80, 3);
    }

    private Plot NewPlot()
    {
        Plot plot = new() { ScaleFactor = 2 };
        PictureFont.Use(plot);
        plot.FigureBackground.Color = theme.Ground;
        plot.DataBackground.Color = theme.Ground;
        plot.Axes.Color(theme.Faint);
        plot.Grid.MajorLineColor = theme.Grid;
        foreach (IAxis axis in (IAxis[])[plot.Axes.Left, plot.Axes.Bottom])
        {
            axis.TickLabelStyle.FontSize = FontSize;
            axis.TickLabelStyle.ForeColor = theme.Ink;
            axis.Label.FontSize = FontSize;
            axis.Label.Bold = false;
            axis.Label.ForeColor = theme.Ink;
        }

        return plot;
    }

    private static void WholeYears(Plot plot, double first, double last)
    {
        int step = Math.Max(1, (int)Math.Ceiling((last - first) / 16));
        double[] years = [.. Enumerable.Range(0, (int)((last - first) / step) + 1).Select(i => first + i * step)];
        plot.Axes.Bottom.SetTicks(years, [.. years.Select(year => year.ToString("0", CultureInfo.InvariantCulture))]);
        plot.Axes.SetLimitsX(first - 0.7, last + 0.7);
    }

    /// <summary>The first of each month, its middle where there is room, its quarters where the chart spans few weeks.</summary>
    private static void DateTicks(IAxis axis, DateOnly first, double lowest, double highest)
    {
        bool room = highest - lowest < 110, few = highest - lowest < 40;
        int from = (int)Math.Floor(lowest) - 6, until = (int)Math.Ceiling(highest) + 6;
        int[] days = [.. Enumerable.Range(from, until - from + 1).Where(day => first.AddDays(day).Day is var date && (date == 1 || (room && date == 15) || (few && date is 8 or 22)))];
        axis.SetTicks([.. days.Select(day => (double)day)], [.. days.Select(day => first.AddDays(day).ToString(room ? "d MMM" : "MMM", CultureInfo.InvariantCulture))]);
    }

    private byte[] Png(Plot plot, int height, int legendEntries)
    {
        plot.Legend.Orientation = Orientation.Horizontal;
        plot.Legend.OutlineWidth = 0;
        plot.Legend.ShadowColor = Colors.Transparent;
        plot.Legend.BackgroundColor = theme.Ground;
        plot.Legend.FontColor = theme.Ink;
        plot.Legend.FontSize = FontSize;
        plot.Legend.SymbolWidth = 34;
        plot.Legend.Margin = new PixelPadding(0);
        plot.Legend.Padding = new PixelPadding(2);
        plot.Legend.InterItemPadding = new PixelPadding(10, 10, 3, 3);
        plot.Legend.TightHorizontalWrapping = true;
        plot.ShowLegend(Edge.Bottom).Padding = new PixelPadding(0, 0, 6, 0);
        return plot.GetImage(WidthPixels, height + legendEntries / 5 * 50).GetImageBytes(ImageFormat.Png);
    }
}
