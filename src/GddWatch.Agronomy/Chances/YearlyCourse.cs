using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Chances;

/// <summary>
/// One daily temperature about the same day of each year: what is usual on it and on the days before and after, and how each year departed from that.
/// <para>Usual: the mean over the years, then over 20 days on each side with weights falling to nothing (a triangle), so that a few years give a smooth curve.</para>
/// <para>Missing input: a year that lacks more than ten days in a row, or one day in ten, of the days ahead and of the fortnight before is no future; a shorter hole goes on from the last
/// departure, a fifth less each day.</para>
/// </summary>
internal sealed class YearlyCourse
{
    private const int SmoothingDays = 20;
    private const int DaysBefore = Fading.SlowReachDays + 15;
    private const int LongestHoleDays = 10;
    private const int FortnightDays = 14;
    private const double MissingShare = 0.1;
    private const double FadeInHole = 0.8;

    private readonly double[] usual;

    private YearlyCourse(double[] usualC, double[][] departures, double[] present, int daysAhead)
    {
        usual = usualC;
        Departures = departures;
        Present = present;
        DaysAhead = daysAhead;
    }

    /// <summary>How far it reaches ahead [days].</summary>
    public int DaysAhead { get; }

    /// <summary>Each year's departures [°C]; the day itself is at <see cref="Zero"/>. Null places hold years that are no future.</summary>
    public double[][] Departures { get; }

    /// <summary>This year's departures up to the day [°C], NaN where missing.</summary>
    public double[] Present { get; }

    /// <summary>The place of the day among the departures.</summary>
    public static int Zero => DaysBefore;

    /// <summary>What is usual some days after the day [°C].</summary>
    public double Usual(int daysAfter) => usual[Zero + daysAfter];

    /// <summary>The course of a column.</summary>
    /// <param name="known">The values known by the day [°C].</param>
    /// <param name="knownFirst">The day of the first of them.</param>
    /// <param name="past">The values of past years [°C].</param>
    /// <param name="pastFirst">The day of the first of them.</param>
    /// <param name="day">The day.</param>
    /// <param name="anchors">The same day in each of the past years.</param>
    /// <param name="daysAhead">How far it reaches ahead [days].</param>
    public static YearlyCourse Of(
        ReadOnlySpan<double> known, DateOnly knownFirst, ReadOnlySpan<double> past, DateOnly pastFirst, DateOnly day, IReadOnlyList<DateOnly> anchors, int daysAhead)
    {
        int length = DaysBefore + daysAhead + 1;
        var sums = new double[length];
        var counts = new int[length];
        for (int year = 0; year < anchors.Count; year++)
        {
            int from = anchors[year].DayNumber - pastFirst.DayNumber - DaysBefore;
            for (int i = Math.Max(0, -from); i < length && from + i < past.Length; i++)
            {
                double value = past[from + i];
                if (double.IsNaN(value)) continue;
                sums[i] += value;
                counts[i]++;
            }
        }

        double[] usualC = Smooth(sums, counts);
        var departures = new double[anchors.Count][];
        for (int year = 0; year < anchors.Count; year++)
        {
            departures[year] = Depart(past, anchors[year].DayNumber - pastFirst.DayNumber - DaysBefore, usualC);
        }

        double[] present = Depart(known, day.DayNumber - knownFirst.DayNumber - DaysBefore, usualC.AsSpan(0, DaysBefore + 1));
        return new YearlyCourse(usualC, departures, present, daysAhead);
    }

    /// <summary>Whether a year is known well enough to be a future.</summary>
    public bool IsFuture(int year)
    {
        int missing = 0, hole = 0;
        double[] course = Departures[year];
        for (int i = Zero - FortnightDays; i < course.Length; i++)
        {
            bool isMissing = double.IsNaN(course[i]);
            hole = isMissing ? hole + 1 : 0;
            if (isMissing) missing++;
            if (hole > LongestHoleDays) return false;
        }

        return missing <= MissingShare * (course.Length - Zero + FortnightDays);
    }

    /// <summary>A year's departures without holes [°C].</summary>
    public double[] Whole(int year) => Whole(Departures[year]);

    /// <summary>Departures without holes [°C].</summary>
    public static double[] Whole(double[] course)
    {
        double[] whole = [.. course];
        double last = 0;
        for (int i = 0; i < whole.Length; i++)
        {
            if (double.IsNaN(whole[i])) whole[i] = last * FadeInHole;
            last = whole[i];
        }

        return whole;
    }

    private static double[] Depart(ReadOnlySpan<double> values, int from, ReadOnlySpan<double> usualC)
    {
        var departures = new double[usualC.Length];
        for (int i = 0; i < departures.Length; i++)
        {
            int place = from + i;
            departures[i] = (uint)place < (uint)values.Length ? values[place] - usualC[i] : double.NaN;
        }

        return departures;
    }

    private static double[] Smooth(double[] sums, int[] counts)
    {
        var smooth = new double[sums.Length];
        for (int i = 0; i < smooth.Length; i++)
        {
            double sum = 0, weights = 0, places = 0;
            for (int k = Math.Max(-SmoothingDays, -i); k <= SmoothingDays && i + k < sums.Length; k++)
            {
                double weight = 1 - Math.Abs(k) / (SmoothingDays + 1.0);
                sum += weight * sums[i + k];
                weights += weight * counts[i + k];
                places += weight * counts[i + k] * k;
            }

            smooth[i] = weights > 0 ? sum / weights : double.NaN;
            // Near an end the days of one side are missing: the mean is moved back by the slope of what there is.
            if (weights > 0 && Math.Abs(places) > 1e-9 * weights) smooth[i] -= Slope(sums, counts, i) * places / weights;
        }

        return smooth;
    }

    private static double Slope(double[] sums, int[] counts, int place)
    {
        double w = 0, x = 0, y = 0, xx = 0, xy = 0;
        for (int i = Math.Max(0, place - SmoothingDays); i <= Math.Min(sums.Length - 1, place + SmoothingDays); i++)
        {
            if (counts[i] == 0) continue;
            w += counts[i];
            x += counts[i] * (i - place);
            xx += counts[i] * (double)(i - place) * (i - place);
            y += sums[i];
            xy += sums[i] * (i - place);
        }

        double determinant = w * xx - x * x;
        return determinant > 0 ? (w * xy - x * y) / determinant : 0;
    }
}
