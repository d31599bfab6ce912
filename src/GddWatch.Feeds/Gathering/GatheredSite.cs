using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Weather;
using GddWatch.Feeds.Faults;

namespace GddWatch.Feeds.Gathering;

/// <summary>What the feeds of one site gave, before it is checked and its holes are filled.</summary>
/// <param name="Site">The site.</param>
/// <param name="Series">The days as they came in; null where there is none.</param>
/// <param name="Faults">What was wrong in the feeds, in their order.</param>
/// <param name="Remarks">What the operator should look at.</param>
/// <param name="Readings">What each feed gave by itself, the preferred one first.</param>
public sealed record GatheredSite(Site Site, DailySeries? Series, IReadOnlyList<Fault> Faults, IReadOnlyList<FeedRemark> Remarks, IReadOnlyList<(string Feed, DailySeries Series)> Readings);
