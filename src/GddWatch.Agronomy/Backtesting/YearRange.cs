using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Agronomy.Backtesting;

/// <summary>How a figure went through the last year beside the years before it, day by day from the year's start; NaN where a value is not known.</summary>
/// <param name="First">The first day of the last year.</param>
/// <param name="Now">The last year's values.</param>
/// <param name="Low">What one in ten of the earlier years lay below.</param>
/// <param name="Middle">Their median.</param>
/// <param name="High">What one in ten of them lay above.</param>
/// <param name="EarlierYears">How many earlier years there are.</param>
public sealed record YearRange(DateOnly First, IReadOnlyList<double> Now, IReadOnlyList<double> Low, IReadOnlyList<double> Middle, IReadOnlyList<double> High, int EarlierYears)
{
    /// <summary>With fewer earlier years there is no range.</summary>
    public const int FewestYears = 3;

    private const int Days = 365;

    /// <summary>
    /// The range of a column, in years that begin on a day of the year; the last is the latest whose first day the series holds with at least a month behind it. Quantiles of type 8, Hyndman and
    /// Fan 1996; a day on which fewer than <see cref="FewestYears"/> earlier years are known has no range.
    /// </summary>
    /// <returns>The range; null where the series holds no such year.</returns>
    public static YearRange? Of(DailySeries series, double[] column, AnnualDay start)
    {
        ArgumentNullException.ThrowIfNull(series);
        ArgumentNullException.ThrowIfNull(column);
        int year = series.LastDay.Year;
        while (year >= series.FirstDay.Year && (start.In(year).AddDays(30) > series.LastDay || start.In(year) < series.FirstDay)) year--;
        if (year < series.FirstDay.Year) return null;
        int[] earlier = [.. Enumerable.Range(series.FirstDay.Year, year - series.FirstDay.Year).Where(each => start.In(each) >= series.FirstDay)];
        double[] now = [.. Enumerable.Range(0, Days).Select(day => At(series, column, start.In(year).AddDays(day)))];
        double[] low = new double[Days], middle = new double[Days], high = new double[Days];
        for (int day = 0; day < Days; day++)
        {
            double[] known = [.. earlier.Select(each => At(series, column, start.In(each).AddDays(day))).Where(double.IsFinite)];
            bool enough = known.Length >= FewestYears;
            low[day] = enough ? Quantiles.Of(known, 0.1) : double.NaN;
            middle[day] = enough ? Quantiles.Median(known) : double.NaN;
            high[day] = enough ? Quantiles.Of(known, 0.9) : double.NaN;
        }

        return new YearRange(start.In(year), now, low, middle, high, earlier.Length);
    }

    private static double At(DailySeries series, double[] column, DateOnly day) => series.Holds(day) ? column[series.IndexOf(day)] : double.NaN;
}
