using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Places;

/// <summary>
/// A local law that bans a kind of work for part of the year, with where it is written and when somebody last looked. Its dates are the law's own and do not
/// move with the hemisphere.
/// </summary>
/// <param name="Kind">The kind of work.</param>
/// <param name="From">The first day of the ban.</param>
/// <param name="Until">The last day of the ban, included; before <paramref name="From"/> where the ban crosses the turn of the year.</param>
/// <param name="Sites">The ids of the sites it binds; null is all of them.</param>
/// <param name="Source">Where the rule is written.</param>
/// <param name="Reviewed">The day on which somebody last checked it.</param>
public sealed record LocalRule(WorkKind Kind, AnnualDay From, AnnualDay Until, IReadOnlyList<string>? Sites, string Source, DateOnly Reviewed)
{
    /// <summary>Whether it is about that work at that site, banned or not on a given day.</summary>
    public bool IsAbout(string siteId, WorkKind kind) => Kind == kind && (Sites is null || Sites.Contains(siteId));

    /// <summary>Whether a day lies in the ban.</summary>
    public bool Bans(DateOnly day)
    {
        DateOnly from = From.In(day.Year);
        DateOnly until = Until.In(day.Year);
        return from <= until ? day >= from && day <= until : day >= from || day <= until;
    }
}
