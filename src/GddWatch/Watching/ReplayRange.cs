using GddWatch.Agronomy.Quantities;
using GddWatch.Feeds.Gathering;

namespace GddWatch.Watching;

/// <summary>Which days a replay lives through.</summary>
internal static class ReplayRange
{
    /// <summary>The last full calendar year that all sites with weather hold, else the last one that any of them holds; null where none does.</summary>
    public static DateSpan? LastFullYear(IReadOnlyList<SiteWeather> weather)
    {
        DateSpan[] spans = [.. weather.Where(site => site.Series is not null).Select(site => new DateSpan(site.Series!.FirstDay, site.Series.LastDay))];
        if (spans.Length == 0) return null;
        int last = spans.Max(span => span.Last.Year);
        int first = spans.Min(span => span.First.Year);
        return FullYear(year => spans.All(span => Holds(span, year))) ?? FullYear(year => spans.Any(span => Holds(span, year)));

        DateSpan? FullYear(Func<int, bool> isFull)
        {
            for (int year = last; year >= first; year--)
            {
                if (isFull(year)) return new DateSpan(new DateOnly(year, 1, 1), new DateOnly(year, 12, 31));
            }

            return null;
        }
    }

    private static bool Holds(DateSpan span, int year) => span.First <= new DateOnly(year, 1, 1) && span.Last >= new DateOnly(year, 12, 31);
}
