namespace GddWatch.Reports;

/// <summary>A chart: the picture for a light and for a dark page as data addresses, what it shows in words, and the line under it.</summary>
internal sealed record ChartView(string Light, string Dark, string Words, string Caption);
