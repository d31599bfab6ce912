using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Treatments.Conditions;
using MathNet.Numerics.Statistics;

namespace GddWatch.Agronomy.Windows;

/// <summary>How turf usually grows at a site through the year, always from whole years before the season that asks, and only where there are at least ten of them.</summary>
internal sealed class GrowthClimate(SiteMetrics metrics)
{
    private const int PeakDays = 30;
    private const int CurveDays = 15;
    private const int DaysOfYear = 365;
    private const int KnownDaysNeeded = 330;

    private readonly Dictionary<(TurfType Turf, int Before), Usual> known = [];

    /// <summary>
    /// The usual yearly peak of growth: over the earlier years, the median of each year's highest 30-day mean growth potential.
    /// <para>Source: definition of this program (DESIGN); quantile of type 8, Hyndman &amp; Fan 1996, Am. Stat. 50:361-365 (SEEN).</para>
    /// </summary>
    /// <param name="turf">Whose growth.</param>
    /// <param name="before">The day before which the years must have ended.</param>
    /// <param name="fallback">What stands in where too few years are known; null or NaN leaves it unknown.</param>
    public UsualValue Peak(TurfType turf, DateOnly before, double? fallback)
    {
        Usual usual = Of(turf, before);
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
        Usual usual = Of(condition.Turf, before);
        if (usual.Years < SiteClimate.SeasonsNeeded)
        {
            string few = Few(usual);
            return condition.Fallback is { } fallback
                ? new GrowthFalls(start, [], metrics.Site.Hemisphere.Place(fallback), $"a fallback, since only {few}")
                : new GrowthFalls(start, [], null, few);
        }

        var daysAhead = new int[DaysOfYear];
        int ahead = GrowthFalls.Never;
        // Backwards, twice around the year, so that the last days look into the next one.
        for (int i = 2 * DaysOfYear - 1; i >= 0; i--)
        {
            if (usual.Curve[i % DaysOfYear] < condition.UnderShareOfPeak * usual.Peak) ahead = 0;
            else if (ahead != GrowthFalls.Never) ahead++;
            daysAhead[i % DaysOfYear] = ahead;
        }

        return new GrowthFalls(start, daysAhead, null, $"mean of {usual.Years} earlier years");
    }

    private static string Few(Usual usual) => $"{(usual.Years == 1 ? "1 earlier year is" : $"{usual.Years} earlier years are")} known and {SiteClimate.SeasonsNeeded} are needed";

    private Usual Of(TurfType turf, DateOnly before)
    {
        AnnualDay start = metrics.Site.Hemisphere.Place(AnnualDay.Of(1, 1));
        int last = before.Year;
        while (start.In(last) > before) last--;
        if (known.TryGetValue((turf, last), out Usual? usual)) return usual;
        usual = Compute(turf, start, last);
        known.Add((turf, last), usual);
        return usual;
    }

    /// <summary>Over the growing years that ended by the start of the one named: from the north's 1 January, half a year later in the south.</summary>
    private Usual Compute(TurfType turf, AnnualDay start, int lastYear)
    {
        double[] month = metrics.GrowthMeans(turf, PeakDays);
        double[] fortnight = metrics.GrowthMeans(turf, CurveDays);
        var peaks = new List<double>();
        var sums = new double[DaysOfYear];
        var counts = new int[DaysOfYear];
        for (int year = metrics.Series.FirstDay.Year; year < lastYear; year++)
        {
            int from = metrics.Series.IndexOf(start.In(year));
            if (from < 0 || from + DaysOfYear > metrics.Series.Count) continue;
            double[] values = [.. month.AsSpan(from, DaysOfYear).ToArray().Where(value => !double.IsNaN(value))];
            if (values.Length < KnownDaysNeeded) continue;
            peaks.Add(values.Max());
            for (int offset = 0; offset < DaysOfYear; offset++)
            {
                // The mean of the days around it, but none beyond the year.
                double around = fortnight[from + Math.Min(offset + CurveDays / 2, DaysOfYear - 1)];
                if (double.IsNaN(around)) continue;
                sums[offset] += around;
                counts[offset]++;
            }
        }

        double[] curve = [.. sums.Zip(counts, (sum, count) => count == 0 ? double.NaN : sum / count)];
        return new Usual(peaks.Count, peaks.Count == 0 ? double.NaN : peaks.QuantileCustom(0.5, QuantileDefinition.R8), curve);
    }

    /// <summary>What is usual over some years.</summary>
    private sealed record Usual(int Years, double Peak, double[] Curve);
}
