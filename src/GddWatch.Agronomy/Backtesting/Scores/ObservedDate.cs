namespace GddWatch.Agronomy.Backtesting.Scores;

/// <summary>Something that was seen at a site, or looked for in vain.</summary>
/// <param name="Site">The site's id.</param>
/// <param name="What">A treatment's id, where the day is the one on which its window should have opened; else what was seen, such as "first-seedlings".</param>
/// <param name="Year">The year in which the season begins; null where the day says it.</param>
/// <param name="Day">The day; null where somebody looked for it all season and it did not come.</param>
public sealed record ObservedDate(string Site, string What, int? Year, DateOnly? Day);
