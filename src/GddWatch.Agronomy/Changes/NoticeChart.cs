namespace GddWatch.Agronomy.Changes;

/// <summary>What the small chart of a notice shows: what decided the window, this season so far, against its limits and the range of earlier years, in the reader's units.</summary>
/// <param name="FirstDay">The first day drawn.</param>
/// <param name="Today">The day whose judging made it; after it the range of earlier years goes on alone.</param>
/// <param name="Panels">What is drawn, one below the other; one or two.</param>
/// <param name="Words">The chart in words, for who cannot see it.</param>
public sealed record NoticeChart(DateOnly FirstDay, DateOnly Today, IReadOnlyList<ChartPanel> Panels, string Words)
{
    /// <summary>The first of the days on which the window is likely to open; null where it is not said beforehand.</summary>
    public DateOnly? LikelyFrom { get; init; }

    /// <summary>The last of them.</summary>
    public DateOnly? LikelyUntil { get; init; }
}

/// <summary>One measure of a chart.</summary>
/// <param name="Title">What is drawn, with its unit in brackets.</param>
/// <param name="Limits">The values that were looked for.</param>
/// <param name="Curve">This year and the range of earlier ones, from the first day on.</param>
public sealed record ChartPanel(string Title, IReadOnlyList<double> Limits, ChartCurve Curve);
