namespace GddWatch.Agronomy.Windows;

/// <summary>The growth of one growing year.</summary>
/// <param name="Peak">Its highest 30-day mean.</param>
/// <param name="Around">For each of its days the mean of the days around it; NaN where it is not known.</param>
internal sealed record GrowingYear(double Peak, double[] Around);
