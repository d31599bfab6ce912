using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Agronomy.Heat;

/// <summary>Accumulated degree-days, year after year from the start date.</summary>
public static class HeatSum
{
    /// <summary>
    /// Gives the heat sum at the end of each day: S(d) = S(d−1) + DD(d), zero before the start date's own day is added.
    /// <para>A day before the series' first start date has no sum (NaN), and after a missing day the sum is NaN until the next start date: a missing day is
    /// not a zero.</para>
    /// <para>Accumulated in double precision and never rounded. Uses no later day, so cutting the series changes nothing before the cut.</para>
    /// </summary>
    /// <param name="series">The air temperatures [°C].</param>
    /// <param name="definition">What is summed and how.</param>
    /// <param name="hemisphere">Where the start date lies in the year.</param>
    /// <param name="soilMeanC">Daily mean soil temperature [°C] at the definition's depth, where the soil is summed; else empty.</param>
    /// <returns>The sum at the end of each day of the series [°C-days].</returns>
    public static double[] Column(DailySeries series, HeatSumDefinition definition, Hemisphere hemisphere, ReadOnlySpan<double> soilMeanC)
    {
        ArgumentNullException.ThrowIfNull(series);
        ArgumentNullException.ThrowIfNull(definition);
        bool soil = definition.SoilDepth is not null;
        ReadOnlySpan<double> minimum = soil ? soilMeanC : series.MinimumAirC;
        ReadOnlySpan<double> maximum = soil ? soilMeanC : series.MaximumAirC;
        double baseC = definition.Base.Celsius;
        double upperC = definition.Upper?.Celsius ?? double.PositiveInfinity;
        var sums = new double[series.Count];
        var start = hemisphere.Place(definition.Start);
        int nextStart = series.IndexOf(start.In(series.FirstDay.Year));
        if (nextStart < 0) nextStart = series.IndexOf(start.In(series.FirstDay.Year + 1));
        double sum = double.NaN;
        for (int i = 0; i < sums.Length; i++)
        {
            if (i == nextStart)
            {
                sum = 0;
                nextStart = series.IndexOf(start.In(series.DayAt(i).Year + 1));
            }

            sum += SimpleAverage.DegreeDays(minimum[i], maximum[i], baseC, upperC);
            sums[i] = sum;
        }

        return sums;
    }
}
