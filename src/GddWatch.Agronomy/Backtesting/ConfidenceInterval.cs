namespace GddWatch.Agronomy.Backtesting;

/// <summary>Between which values a figure lies with a stated confidence, in the figure's own unit.</summary>
/// <param name="Low">The lower end.</param>
/// <param name="High">The upper end.</param>
/// <param name="Level">The confidence, such as 0.95.</param>
public readonly record struct ConfidenceInterval(double Low, double High, double Level);
