using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Treatments.Conditions;

namespace GddWatch.Agronomy.Windows;

/// <summary>How turf usually grows at a site through the year, always from whole years before the season that asks, and only where there are at least ten of them.</summary>
internal sealed class GrowthClimate(SiteMetrics metrics, SiteMemory memory)
{
    private const int PeakDays = 30;
    private const int CurveDays = 15;
    private const int DaysOfYear = UsualGrowth.DaysOfYear;
    private const int KnownDaysNeeded = 330;

    private readonly Dictionary<(UsualGrowth Usual, double UnderShareOfPeak), int[]> daysAhead = [];

    /// <summary>
    /// The usual yearly peak of growth: over the earlier years, the median of each year's highest 30-day mean growth potential.
    /// <para>Source: definition of this program (DESIGN); quantile of type 8, Hyndman &amp; Fan 1996, Am. Stat. 50:361-365 (SEEN).</para>
    /// </summary>
    /// <param name="turf">Whose growth.</param>
    /// <param name="before">The day before which the years must have ended.</param>
    /// <param name="fallback">What stands in where too few years are known; null or NaN leaves it unknown.</param>
    public UsualValue Peak(TurfType turf, DateOnly before, double? fallback)
    {
        UsualGrowth usual = Of(turf, before);
        if (usual.Years >= SiteClimate.SeasonsNeeded) return new UsualValue(usual.Peak, $"median of {usual.Years} earlier years");
        string few = Few(usual);
        return fallback is { } stated && !double.IsNaN(stated) ? new UsualValue(stated, $"a fallback, since only {few}", IsFallback: true) : new UsualValue(null, few);
    }

    /// <summary>
    /// When growth usually falls under a share of its yearly peak: the first day, from the one asked about, on which the mean over the earlier years of the
    /// 15-day mean growth potential around that day of the year is under it; that day itself where it is under it already.
    /// <para>Source: definition of this program (DESIGN).</para>
    /// </summary>
    /// <param name="condition">Whose growth, and the share.</param>
    /// <param name="before">The day before which the years must have ended.</param>
    public GrowthFalls Falls(DaysBeforeGrowthFalls condition, DateOnly before)
    {
        AnnualDay start = metrics.Site.Hemisphere.Place(AnnualDay.Of(1, 1));
        UsualGrowth usual = Of(condition.Turf, before);
        if (usual.Years < SiteClimate.SeasonsNeeded)
        {
            string few = Few(usual);
            return condition.Fallback is { } fallback
                ? new GrowthFalls(start, [], metrics.Site.Hemisphere.Place(fallback), $"a fallback, since only {few}")
                : new GrowthFalls(start, [], null, few);
        }

        return new GrowthFalls(start, DaysAhead(usual, condition.UnderShareOfPeak), null, $"mean of {usual.Years} earlier years");
    }

    // The same for all treatments that ask before the same year.
    private int[] DaysAhead(UsualGrowth usual, double underShareOfPeak)
    {
        if (daysAhead.TryGetValue((usual, underShareOfPeak), out int[]? made)) return made;
        made = new int[DaysOfYear];
        int ahead = GrowthFalls.Never;
        // Backwards, twice around the year, so that the last days look into the next one.
        for (int i = 2 * DaysOfYear - 1; i >= 0; i--)
        {
            if (usual.Curve[i % DaysOfYear] < underShareOfPeak * usual.Peak) ahead = 0;
            else if (ahead != GrowthFalls.Never) ahead++;
            made[i % DaysOfYear] = ahead;
        }

        daysAhead.Add((usual, underShareOfPeak), made);
        return made;
    }

    private static string Few(UsualGrowth usual) => $"{(usual.Years == 1 ? "1 earlier year is" : $"{usual.Years} earlier years are")} known and {SiteClimate.SeasonsNeeded} are needed";

    private UsualGrowth Of(TurfType turf, DateOnly before)
    {
        AnnualDay start = metrics.Site.Hemisphere.Place(AnnualDay.Of(1, 1));
        int last = before.Year;
        while (start.In(last) > before) last--;
        return Of(turf, start, last);
    }

    /// <summary>Over the growing years that ended by the start of the one named: from the north's 1 January, half a year later in the south.</summary>
    private UsualGrowth Of(TurfType turf, AnnualDay start, int last)
    {
        if (memory.Growth.TryGet((turf, last), out UsualGrowth? known)) return known!;
        // One year more than the season before knew: a backtest asks for every season of many years.
        UsualGrowth usual = last <= metrics.Series.FirstDay.Year ? UsualGrowth.Nothing : Of(turf, start, last - 1).With(YearOf(turf, start, last - 1));
        return memory.Growth.Keep((turf, last), usual, start.In(last).AddDays(-1));
    }

    /// <summary>The growth of one growing year; null where too little of it is known.</summary>
    private GrowingYear? YearOf(TurfType turf, AnnualDay start, int year)
    {
        int from = metrics.Series.IndexOf(start.In(year));
        if (from < 0 || from + DaysOfYear > metrics.Series.Count) return null;
        int knownDays = 0;
        double peak = double.NegativeInfinity;
        foreach (double value in metrics.GrowthMeans(turf, PeakDays).AsSpan(from, DaysOfYear))
        {
            if (double.IsNaN(value)) continue;
            knownDays++;
            peak = Math.Max(peak, value);
        }

        if (knownDays < KnownDaysNeeded) return null;
        double[] fortnight = metrics.GrowthMeans(turf, CurveDays);
        var around = new double[DaysOfYear];
        // The mean of the days around it, but none beyond the year.
        for (int offset = 0; offset < DaysOfYear; offset++) around[offset] = fortnight[from + Math.Min(offset + CurveDays / 2, DaysOfYear - 1)];
        return new GrowingYear(peak, around);
    }
}
