namespace GddWatch.Agronomy.Backtesting.Fitting;

/// <summary>Constants that were chosen.</summary>
/// <param name="Grid">The place of the second constant in the grid.</param>
/// <param name="Edge">The threshold as the courses hold it, with its sign changed where the course falls.</param>
internal readonly record struct FitChoice(int Grid, double Edge);
