using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Weather;
using MathNet.Numerics.Statistics;

namespace GddWatch.Agronomy.Windows;

/// <summary>When the last freeze of a winter usually comes at a site, always from winters that were over before the season that asks, and only where there are at least ten of them.</summary>
internal sealed class LastFreezeClimate(SiteMetrics metrics, SiteMemory memory)
{
    /// <summary>
    /// The date by which the last freeze is past with a chance p: with the share pF of earlier winters that had a freeze, and F the distribution of their last ones, a later freeze comes with
    /// the chance pF (1 − F), so that it is the empirical quantile at F = 1 − (1 − p)/pF; no usual date where that is not above 0. Of the years' dates the one nearest to the middle of the season.
    /// <para>Valid for any site; a year is split on 24 July in the north and searched backwards from there, and ten days without weather before the freeze spoil it.</para>
    /// <para>Missing input: with fewer than ten winters the condition's fallback, else unknown.</para>
    /// <para>Source: mixed discrete and continuous freeze probability after US climate normals, and Utah Climate Center, freeze table help (both SEEN, science reference 3.9); quantile of type 8,
    /// Hyndman &amp; Fan 1996, Am. Stat. 50:361-365 (SEEN).</para>
    /// </summary>
    public UsualDate Of(SeasonView view, DaysAfterLastFreeze condition)
    {
        AnnualDay summer = metrics.Site.Hemisphere.Place(SiteClimate.MidSummer);
        var offsets = new List<double>();
        int winters = 0;
        for (int year = metrics.Series.FirstDay.Year - 1; summer.In(year + 1) <= view.Season.Span.First; year++)
        {
            if (OffsetIn(year, summer, condition.Freeze.Celsius) is not { } offset) continue;
            winters++;
            if (offset >= 0) offsets.Add(offset);
        }

        if (winters < SiteClimate.SeasonsNeeded)
        {
            string few = $"{SiteClimate.OnlyKnown(winters)}, and {SiteClimate.SeasonsNeeded} are needed";
            return condition.Fallback is { } fallback
                ? new UsualDate(view.DateInSeason(fallback), false, $"a fallback for lawns of this kind, since {few}", IsFallback: true)
                : new UsualDate(null, false, few);
        }

        double share = offsets.Count / (double)winters;
        double quantile = 1 - (1 - condition.Chance) / share;
        if (!(quantile > 0)) return new UsualDate(null, true, $"it froze in {offsets.Count} of {winters} earlier winters");
        int days = (int)Math.Round(offsets.QuantileCustom(quantile, QuantileDefinition.R8));
        string what = condition.Chance == 0.5 && offsets.Count == winters ? "median" : $"{Math.Round(condition.Chance * 100)} % date";
        return new UsualDate(NearestToMiddle(view, summer, days), false, $"{what} of {winters} earlier winters");
    }

    private static DateOnly NearestToMiddle(SeasonView view, AnnualDay summer, int days)
    {
        int middle = view.Season.Span.First.DayNumber + view.Season.Span.Days / 2;
        DateOnly nearest = summer.In(view.Season.Year - 1).AddDays(days);
        foreach (int year in (ReadOnlySpan<int>)[view.Season.Year - 2, view.Season.Year])
        {
            DateOnly other = summer.In(year).AddDays(days);
            if (Math.Abs(other.DayNumber - middle) < Math.Abs(nearest.DayNumber - middle)) nearest = other;
        }

        return nearest;
    }

    /// <summary>Days from midsummer to the last freeze before the next one; −1 where none came; null where too many days are missing to say.</summary>
    private int? OffsetIn(int year, AnnualDay summer, double freezeC) => memory.LastFreezes.TryGet((freezeC, year), out int? known)
        ? known
        : memory.LastFreezes.Keep((freezeC, year), Search(summer.In(year), summer.In(year + 1), freezeC), summer.In(year + 1).AddDays(-1));

    private int? Search(DateOnly from, DateOnly next, double freezeC)
    {
        int missing = 0;
        for (DateOnly day = next.AddDays(-1); day >= from; day = day.AddDays(-1))
        {
            Mark? mark = metrics.Series.Holds(day) ? metrics.Series.QualityAt(metrics.Series.IndexOf(day)) : null;
            if (mark is not { } known || !known.IsReading())
            {
                if (++missing >= SiteClimate.MissingDaysThatSpoil) return null;
                continue;
            }

            if (metrics.Series.MinimumAirC[metrics.Series.IndexOf(day)] <= freezeC) return day.DayNumber - from.DayNumber;
        }

        return -1;
    }
}
