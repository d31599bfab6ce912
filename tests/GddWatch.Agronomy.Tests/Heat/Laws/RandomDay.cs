namespace GddWatch.Agronomy.Tests.Heat.Laws;

/// <summary>A day and thresholds made up at random.</summary>
public sealed record RandomDay(double MinimumC, double MaximumC, double NextMinimumC, double BaseC, double UpperC);
