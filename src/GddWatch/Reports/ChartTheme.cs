using ScottPlot;

namespace GddWatch.Reports;

/// <summary>The colours of charts on a light or on a dark page. Ink and lines have a contrast of at least 4.5 to 1 with the ground.</summary>
/// <param name="Ground">The ground.</param>
/// <param name="Ink">Text.</param>
/// <param name="Faint">Axes and what is secondary.</param>
/// <param name="Grid">The grid.</param>
/// <param name="Series">The lines and marks, told apart by their shapes too.</param>
internal sealed record ChartTheme(Color Ground, Color Ink, Color Faint, Color Grid, IReadOnlyList<Color> Series)
{
    public static ChartTheme Light { get; } = new(
        Color.FromHex("#ffffff"), Color.FromHex("#1f2429"), Color.FromHex("#565d64"), Color.FromHex("#e4e7e9"),
        [Color.FromHex("#1d5f8f"), Color.FromHex("#a8500f"), Color.FromHex("#1c7350"), Color.FromHex("#7b3f98"), Color.FromHex("#9b2241"), Color.FromHex("#5e5a1d"), Color.FromHex("#33548a"), Color.FromHex("#4d5459")]);

    public static ChartTheme Dark { get; } = new(
        Color.FromHex("#16191c"), Color.FromHex("#e8eaec"), Color.FromHex("#a9b0b6"), Color.FromHex("#33393e"),
        [Color.FromHex("#7cc0ee"), Color.FromHex("#f0a466"), Color.FromHex("#6fd0a6"), Color.FromHex("#cfa2e6"), Color.FromHex("#f08fa7"), Color.FromHex("#d2cd7c"), Color.FromHex("#9db9ea"), Color.FromHex("#c2c8cc")]);

    /// <summary>The marks of the series.</summary>
    public static IReadOnlyList<MarkerShape> Marks { get; } =
    [
        MarkerShape.FilledCircle, MarkerShape.FilledSquare, MarkerShape.FilledTriangleUp, MarkerShape.FilledDiamond,
        MarkerShape.FilledTriangleDown, MarkerShape.Cross, MarkerShape.Eks, MarkerShape.OpenCircle,
    ];
}
