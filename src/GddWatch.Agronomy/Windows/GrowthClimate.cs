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
    private readonly Dictionary<(Usual Usual, double UnderShareOfPeak), int[]> daysAhead = [];

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

        return new GrowthFalls(start, DaysAhead(usual, condition.UnderShareOfPeak), null, $"mean of {usual.Years} earlier years");
    }

    // The same for all treatments that ask before the same year.
    private int[] DaysAhead(Usual usual, double underShareOfPeak)
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

    private static string Few(Usual usual) => $"{(usual.Years == 1 ? "1 earlier year is" : $"{usual.Years} earlier years are")} known and {SiteClimate.SeasonsNeeded} are needed";

    private Usual Of(TurfType turf, DateOnly before)
    {
        AnnualDay start = metrics.Site.Hemisphere.Place(AnnualDay.Of(1, 1));
        int last = before.Year;
        while (start.In(last) > before) last--;
        return Of(turf, start, last);
    }

    /// <summary>Over the growing years that ended by the start of the one named: from the north's 1 January, half a year later in the south.</summary>
    private Usual Of(TurfType turf, AnnualDay start, int last)
    {
        if (known.TryGetValue((turf, last), out Usual? usual)) return usual;
        // One year more than the season before knew: a backtest asks for every season of many years.
        usual = last <= metrics.Series.FirstDay.Year ? Usual.Nothing : Of(turf, start, last - 1).With(YearOf(turf, start, last - 1));
        known.Add((turf, last), usual);
        return usual;
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

    /// <summary>The growth of one growing year.</summary>
    /// <param name="Peak">Its highest 30-day mean.</param>
    /// <param name="Around">For each of its days the mean of the days around it; NaN where it is not known.</param>
    private sealed record GrowingYear(double Peak, double[] Around);

    /// <summary>What is usual over some years.</summary>
    private sealed class Usual(IReadOnlyList<double> peaks, double[] sums, int[] counts)
    {
        private double? peak;
        private double[]? curve;

        /// <summary>What is usual where no year is known.</summary>
        public static Usual Nothing => new([], new double[DaysOfYear], new int[DaysOfYear]);

        /// <summary>How many years are known.</summary>
        public int Years => peaks.Count;

        /// <summary>The median of their peaks; NaN where none is known.</summary>
        public double Peak => peak ??= peaks.Count == 0 ? double.NaN : peaks.QuantileCustom(0.5, QuantileDefinition.R8);

        /// <summary>The mean of each day of the year; NaN where it is not known.</summary>
        public double[] Curve => curve ??= [.. sums.Zip(counts, (sum, count) => count == 0 ? double.NaN : sum / count)];

        /// <summary>The same with one year more; itself where that one is not known.</summary>
        public Usual With(GrowingYear? year)
        {
            if (year is null) return this;
            double[] sumsThen = [.. sums];
            int[] countsThen = [.. counts];
            for (int offset = 0; offset < DaysOfYear; offset++)
            {
                if (double.IsNaN(year.Around[offset])) continue;
                sumsThen[offset] += year.Around[offset];
                countsThen[offset]++;
            }

            return new Usual([.. peaks, year.Peak], sumsThen, countsThen);
        }
    }
}
