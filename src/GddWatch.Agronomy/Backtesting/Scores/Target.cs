using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Treatments;

namespace GddWatch.Agronomy.Backtesting.Scores;

/// <summary>The day on which a window should have opened in one season, by what was seen.</summary>
/// <param name="Day">The day; null where it was looked for in vain.</param>
public sealed record Target(DateOnly? Day)
{
    /// <summary>How far from a season's middle a day may lie and still be that season's [days].</summary>
    private const int HalfAYearDays = 183;

    /// <summary>
    /// The target of a treatment at a site in a season: the first day that was seen under the treatment's own id, else under what it is compared with, less the days by which
    /// the window should open before. Null where nothing is known.
    /// </summary>
    public static Target? Of(Treatment treatment, string site, Season season, ObservedDates observed)
    {
        ArgumentNullException.ThrowIfNull(treatment);
        ArgumentNullException.ThrowIfNull(observed);
        foreach (SeenEvent seen in (SeenEvent[])[new SeenEvent(treatment.Id, 0), .. treatment.CompareWith.Seen])
        {
            ObservedDate[] here = [.. observed.Of(site, seen.What).Where(each => IsOf(each, season))];
            if (here.Length == 0) continue;
            DateOnly? first = here.Min(each => each.Day);
            return new Target(first?.AddDays(-seen.OpensBeforeDays));
        }

        return null;
    }

    /// <summary>Whether an observation belongs to a season: by the year where it names one, else to the season whose middle is nearest.</summary>
    public static bool IsOf(ObservedDate observed, Season season)
    {
        ArgumentNullException.ThrowIfNull(observed);
        if (observed.Year is { } year) return year == season.Year;
        int middle = season.Span.First.DayNumber + season.Span.Days / 2;
        return observed.Day is { } day && day.DayNumber - middle is var apart and > -HalfAYearDays and < HalfAYearDays;
    }
}
