using GddWatch.Agronomy.Changes;
using GddWatch.Notices.Pictures;
using ScottPlot;
using ScottPlot.MultiplotLayouts;

namespace GddWatch.Notices.Composing;

/// <summary>Draws the small chart of a notice: each measure with its limits, and the day of the notice.</summary>
internal static class NoticePictures
{
    /// <summary>How many notices of one mail have a picture; those after it have its words alone, so that a mail at a first start does not grow to megabytes.</summary>
    public const int Most = 12;

    /// <summary>The width at which it is shown [CSS pixels].</summary>
    public const int ShownWidth = 520;

    private const int ShownPanelHeight = 180;

    /// <summary>Names of days nearer to each other than this would run together [days].</summary>
    private const int NameApartDays = 14;

    /// <summary>Half as large again as it is shown, for sharp screens.</summary>
    private const double PixelsPerShown = 1.5;

    /// <summary>Large enough to be read where a phone shows the picture at two thirds of its size [pixels].</summary>
    private const float TextSize = 22;

    private static readonly Color Line = Color.FromHex("#2c5f8a");
    private static readonly Color Likely = Color.FromHex("#d9a441").WithAlpha(0.35);
    private static readonly Color Limit = Color.FromHex("#a33f2c");

    /// <summary>The name of a notice's picture inside the mail.</summary>
    public static string ContentId(int index) => $"chart-{index}@notice";

    /// <summary>The height at which it is shown [CSS pixels].</summary>
    public static int ShownHeight(NoticeChart chart) => ShownPanelHeight * chart.Panels.Count;

    /// <summary>The picture as PNG.</summary>
    public static byte[] Png(NoticeChart chart) =>
        CurvePlot.Png([.. chart.Panels.Select(panel => Draw(panel, chart))], new Rows(), (int)(ShownWidth * PixelsPerShown), (int)(ShownHeight(chart) * PixelsPerShown));

    private static Plot Draw(ChartPanel panel, NoticeChart chart)
    {
        Plot plot = CurvePlot.Of(panel.Title, panel.Curve, Line, TextSize);
        plot.Axes.Right.FrameLineStyle.Width = 0;
        plot.Axes.Top.FrameLineStyle.Width = 0;
        // Room for four digits, so that the days of two panels stand below each other.
        plot.Axes.Left.MinimumSize = 70;
        foreach (double limit in panel.Limits) plot.Add.HorizontalLine(limit, 3, Limit, LinePattern.Dashed).EnableAutoscale = true;
        if (chart is { LikelyFrom: { } from, LikelyUntil: { } until })
        {
            // Whole days: from the morning of the first to the evening of the last.
            plot.Add.HorizontalSpan(from.DayNumber - chart.FirstDay.DayNumber - 0.5, until.DayNumber - chart.FirstDay.DayNumber + 0.5, Likely);
        }

        int today = chart.Today.DayNumber - chart.FirstDay.DayNumber;
        plot.Add.VerticalLine(today, 2, CurvePlot.Faint, LinePattern.Dotted);
        (int day, double? value) = panel.Curve.Now.Index().Last(each => each.Item is not null);
        plot.Add.Marker(day, value!.Value, MarkerShape.FilledCircle, 11, Line);
        CurvePlot.NameDays(plot, chart.FirstDay, [today - 56, today - 28, today, .. LikelyDays(chart, today)]);
        plot.Axes.AutoScale();
        plot.Axes.SetLimitsX(0, panel.Curve.Now.Count - 1);
        return plot;
    }

    /// <summary>The ends of the likely days, as far as their names do not run into each other.</summary>
    private static IEnumerable<int> LikelyDays(NoticeChart chart, int today)
    {
        if (chart is not { LikelyFrom: { } from, LikelyUntil: { } until }) yield break;
        int last = today;
        foreach (int day in (int[])[from.DayNumber - chart.FirstDay.DayNumber, until.DayNumber - chart.FirstDay.DayNumber])
        {
            if (day - last < NameApartDays) continue;
            yield return last = day;
        }
    }
}
