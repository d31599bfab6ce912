namespace GddWatch.Agronomy.Backtesting.Scores;

/// <summary>A date that was foretold beside the one that was observed, in one season at one site.</summary>
/// <param name="Site">The site's id.</param>
/// <param name="Year">The year in which the season begins.</param>
/// <param name="Foretold">The date foretold; null where it was foretold that it would not come.</param>
/// <param name="Observed">The date observed; null where somebody looked for it all season and it did not come.</param>
/// <param name="NeverCountsAs">The day that stands in for a foretold date that never came: the day after the season.</param>
public sealed record DatePair(string Site, int Year, DateOnly? Foretold, DateOnly? Observed, DateOnly NeverCountsAs)
{
    /// <summary>Days from the observed date to the foretold one, positive where it was foretold too late [days]; null where nothing was observed.</summary>
    public int? ErrorDays => Observed is { } seen ? (Foretold ?? NeverCountsAs).DayNumber - seen.DayNumber : null;
}
