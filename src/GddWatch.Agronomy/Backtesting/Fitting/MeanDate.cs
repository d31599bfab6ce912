namespace GddWatch.Agronomy.Backtesting.Fitting;

/// <summary>How well the mean date of the other years, or of the other sites, foretells: what any fit must beat.</summary>
/// <param name="YearLeftOutErrorDays">Mean absolute error of years left out, at every site at once; the mean date is each site's own where it has other years, else that of all sites [days].</param>
/// <param name="SiteLeftOutErrorDays">Mean absolute error of sites left out, by the mean date of the other sites [days]; null with one site.</param>
/// <param name="SpreadDays">Standard deviation of the observed dates [days].</param>
/// <param name="YearLeftOutErrors">The errors of the years left out, event by event [days].</param>
public sealed record MeanDate(double YearLeftOutErrorDays, double? SiteLeftOutErrorDays, double SpreadDays, IReadOnlyList<double> YearLeftOutErrors);
