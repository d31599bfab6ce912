using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Windows;

/// <summary>When growth usually falls under a share of its yearly peak, as seen from any day; made once a season, since it is asked for on every day of it.</summary>
/// <param name="start">The day on which the year of growth starts.</param>
/// <param name="daysAhead">For each day of that year the days until growth falls; empty where the fallback stands in or nothing is known.</param>
/// <param name="fallback">The stated date, placed in the hemisphere; null where the site's own past is known or nothing is.</param>
/// <param name="source">Where it comes from.</param>
internal sealed class GrowthFalls(AnnualDay start, int[] daysAhead, AnnualDay? fallback, string source)
{
    /// <summary>In the place of a number of days: growth never falls so far.</summary>
    public const int Never = -1;

    /// <summary>The next day on which growth falls, from a day on; that day itself where it is under the share already.</summary>
    public UsualDate After(DateOnly day)
    {
        if (fallback is { } annual)
        {
            DateOnly date = annual.In(day.Year);
            return new UsualDate(date >= day ? date : annual.In(day.Year + 1), false, source, IsFallback: true);
        }

        if (daysAhead.Length == 0) return new UsualDate(null, false, source);
        DateOnly first = start.In(day.Year);
        if (first > day) first = start.In(day.Year - 1);
        int ahead = daysAhead[Math.Min(day.DayNumber - first.DayNumber, daysAhead.Length - 1)];
        return ahead == Never ? new UsualDate(null, true, source) : new UsualDate(day.AddDays(ahead), false, source);
    }
}
