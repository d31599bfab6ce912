using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Treatments;

/// <summary>What is often done too early: named with its reason, never told in a mail of its own.</summary>
/// <param name="Name">What must wait.</param>
/// <param name="Turf">The turf it is about.</param>
/// <param name="From">The first day of the year on which it is named, written for the north.</param>
/// <param name="Until">The last day.</param>
/// <param name="Reason">Why it must wait, in a sentence.</param>
/// <param name="WaitFor">The id of the treatment whose window is waited for; null where nothing is.</param>
public sealed record NotYet(string Name, IReadOnlyList<TurfType> Turf, AnnualDay From, AnnualDay Until, string Reason, string? WaitFor)
{
    /// <summary>Whether it is named at a site on a day.</summary>
    public bool IsNamed(Site site, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(site);
        return site.Turf.Any(Turf.Contains) && new SeasonRule(From, Until).AtOrAfter(day, site.Hemisphere).Span.Contains(day);
    }
}
