using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Places;

/// <summary>A local law that bans a kind of work for part of the year, with where it is written and when somebody last looked.</summary>
/// <param name="Kind">The kind of work, such as "feeding" or "watering".</param>
/// <param name="From">The first day of the ban.</param>
/// <param name="Until">The last day of the ban, included; before <paramref name="From"/> where the ban crosses the turn of the year.</param>
/// <param name="Sites">The ids of the sites it binds; null is all of them.</param>
/// <param name="Source">Where the rule is written.</param>
/// <param name="Reviewed">The day on which somebody last checked it.</param>
public sealed record LocalRule(string Kind, AnnualDay From, AnnualDay Until, IReadOnlyList<string>? Sites, string Source, DateOnly Reviewed);
