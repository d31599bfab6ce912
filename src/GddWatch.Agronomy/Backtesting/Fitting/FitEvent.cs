using GddWatch.Agronomy.Places;

namespace GddWatch.Agronomy.Backtesting.Fitting;

/// <summary>An observed date that constants are fitted to.</summary>
/// <param name="Site">The site's id.</param>
/// <param name="Season">The season in which it was looked for.</param>
/// <param name="Day">The day.</param>
public sealed record FitEvent(string Site, Season Season, DateOnly Day)
{
    /// <summary>The day as a day of the season, 0 for its first; negative or past its end where it lies outside [days].</summary>
    public int Offset => Day.DayNumber - Season.Span.First.DayNumber;
}
