namespace GddWatch.Agronomy.Backtesting.Fitting;

/// <summary>How far the constants can be moved, together, before the fit is worse by more than a stated number of days.</summary>
/// <param name="WithinDays">By how much the root mean square error may be larger than the least one [days].</param>
/// <param name="LowestGridValue">The lowest second constant among them.</param>
/// <param name="HighestGridValue">The highest.</param>
/// <param name="LowestThreshold">The lowest threshold among them, each with the second constant that suits it.</param>
/// <param name="HighestThreshold">The highest.</param>
/// <param name="LowestThresholdAtBest">The lowest threshold among them that goes with the second constant chosen.</param>
/// <param name="HighestThresholdAtBest">The highest that goes with it.</param>
public sealed record FlatOptimum(
    double WithinDays, double LowestGridValue, double HighestGridValue, double LowestThreshold, double HighestThreshold, double LowestThresholdAtBest, double HighestThresholdAtBest);
