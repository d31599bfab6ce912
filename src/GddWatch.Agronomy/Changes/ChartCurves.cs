using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Windows;
using MathNet.Numerics.Statistics;

namespace GddWatch.Agronomy.Changes;

/// <summary>Makes the curves of charts.</summary>
internal static class ChartCurves
{
    /// <summary>
    /// The values of some days with the range of the same days of earlier years: their quantiles of 10 % and 90 %, where at least <see cref="SiteClimate.SeasonsNeeded"/> years are known on every
    /// one of the days. Days to come have the range alone.
    /// <para>Source: quantiles of type 8 after Hyndman &amp; Fan 1996, Am. Stat. 50:361-365 (SEEN).</para>
    /// </summary>
    /// <param name="metrics">The site's weather as it is known.</param>
    /// <param name="values">One value a day of the series; NaN where it is not known.</param>
    /// <param name="days">The days of the curve.</param>
    /// <param name="shown">The value in the reader's unit.</param>
    public static ChartCurve Of(SiteMetrics metrics, double[] values, DateSpan days, Func<double, double> shown)
    {
        var now = new List<double?>(days.Days);
        var low = new List<double>(days.Days);
        var high = new List<double>(days.Days);
        for (DateOnly day = days.First; day <= days.Last; day = day.AddDays(1))
        {
            int index = metrics.Series.IndexOf(day);
            now.Add((uint)index >= (uint)values.Length || double.IsNaN(values[index]) ? null : Math.Round(shown(values[index]), 2));
            double[] earlier = [.. Earlier(metrics, values, day)];
            if (earlier.Length < SiteClimate.SeasonsNeeded) continue;
            low.Add(Math.Round(shown(earlier.QuantileCustom(0.1, QuantileDefinition.R8)), 2));
            high.Add(Math.Round(shown(earlier.QuantileCustom(0.9, QuantileDefinition.R8)), 2));
        }

        // A range over part of the days would look like one over all.
        return low.Count == days.Days ? new ChartCurve(now, low, high) : new ChartCurve(now, [], []);
    }

    private static IEnumerable<double> Earlier(SiteMetrics metrics, double[] values, DateOnly day)
    {
        AnnualDay sameDay = AnnualDay.Of(day);
        for (int year = metrics.Series.FirstDay.Year; year < day.Year; year++)
        {
            int index = metrics.Series.IndexOf(sameDay.In(year));
            if ((uint)index < (uint)values.Length && !double.IsNaN(values[index])) yield return values[index];
        }
    }
}
