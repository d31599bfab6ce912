using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Benchmarks.Seasons;

/// <summary>The same figures from this program's reader and its heat sums.</summary>
internal static class HeatSumsByColumns
{
    private const double BaseC = 10;
    private const double FahrenheitPerCelsius = 1.8;

    /// <summary>The figures over all series. Days without both extremes are left out before, since the other ways know nothing of them.</summary>
    public static TableSums Of(IEnumerable<DailySeries> all)
    {
        TableSums sums = default;
        foreach (DailySeries series in all) sums = Add(sums, series);
        return sums;
    }

    private static TableSums Add(TableSums sums, DailySeries series)
    {
        List<double> minimumC = [], maximumC = [];
        List<int> starts = [];
        for (int i = 0; i < series.Count; i++)
        {
            if (double.IsNaN(series.MinimumAirC[i]) || double.IsNaN(series.MaximumAirC[i])) continue;
            if (starts.Count == 0 || series.DayAt(i).Year > series.DayAt(0).Year + starts.Count - 1) starts.Add(minimumC.Count);
            minimumC.Add(series.MinimumAirC[i]);
            maximumC.Add(series.MaximumAirC[i]);
        }

        HashSet<int> firsts = [.. starts];
        double[] heat = new double[minimumC.Count];
        HeatSum.Accumulate(DegreeDayMethod.SimpleAverage, DegreeDayCutoff.None, [.. minimumC], [.. maximumC], BaseC, null, [.. starts], heat);
        (double degreeDays, double yearSums, double means) = (0, 0, 0);
        for (int i = 0; i < heat.Length; i++)
        {
            degreeDays += heat[i] - (i > 0 && !firsts.Contains(i) ? heat[i - 1] : 0);
            yearSums += heat[i];
            int days = Math.Min(i + 1, 5);
            double mean = 0;
            for (int back = 0; back < days; back++) mean += (minimumC[i - back] + maximumC[i - back]) / 2;
            means += (mean / days * FahrenheitPerCelsius) + 32;
        }

        return new TableSums(sums.Days + heat.Length, sums.DegreeDaysF + (degreeDays * FahrenheitPerCelsius), sums.YearSumsF + (yearSums * FahrenheitPerCelsius), sums.FiveDayMeansF + means);
    }
}
