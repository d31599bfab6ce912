using GddWatch.Agronomy.Changes;
using GddWatch.Notices.Pictures;
using ScottPlot;
using ScottPlot.MultiplotLayouts;

namespace GddWatch.Notices.Composing;

/// <summary>Draws the small charts of a bulletin: soil and heat beside each other.</summary>
internal static class BulletinPictures
{
    private const int WidthPixels = 780;
    private const int HeightPixels = 270;
    private const float TextSize = 22;
    private static readonly Color Line = Color.FromHex("#2c5f8a");
    private static readonly Color Warmth = Color.FromHex("#a65a1f");

    /// <summary>The name of a site's picture inside the mail.</summary>
    public static string ContentId(int index) => $"chart-{index}@bulletin";

    /// <summary>The picture as PNG, half as large again as it is shown.</summary>
    public static byte[] Png(BulletinChart chart) => CurvePlot.Png(
        [
            Draw(chart.Soil, chart.LastDay, chart.SoilUnit == "°F" ? "Soil at 2 inches [°F]" : "Soil at 5 cm [°C]", Line),
            Draw(chart.Heat, chart.LastDay, chart.SoilUnit == "°F" ? "Heat, base 50 °F [°F-days]" : "Heat, base 10 °C [°C-days]", Warmth),
        ],
        new Columns(),
        WidthPixels,
        HeightPixels);

    private static Plot Draw(ChartCurve curve, DateOnly lastDay, string title, Color colour)
    {
        Plot plot = CurvePlot.Of(title, curve, colour, TextSize);
        int last = curve.Now.Count - 1;
        CurvePlot.NameDays(plot, lastDay.AddDays(-last), [last - 56, last - 28, last]);
        plot.Axes.SetLimitsX(0, last + 6);
        return plot;
    }
}
