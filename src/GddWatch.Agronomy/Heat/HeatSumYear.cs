using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Soil;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Agronomy.Heat;

/// <summary>Where one year of a heat sum lies in the columns.</summary>
/// <param name="ZeroFrom">The place of the start date.</param>
/// <param name="CountsFrom">The place of the first day that counts, or the first that may have been it; <paramref name="End"/> where no day of the year is it.</param>
/// <param name="End">The place after the year's last day in the series.</param>
/// <param name="IsHidden">Whether a missing day hides which day is the first to count.</param>
internal readonly record struct HeatSumYear(int ZeroFrom, int CountsFrom, int End, bool IsHidden)
{
    /// <summary>The years whose start date the series holds, in order.</summary>
    public static List<HeatSumYear> Of(DailySeries series, HeatSumDefinition definition, Hemisphere hemisphere)
    {
        List<int> starts = StartsIn(series, hemisphere.Place(definition.Start));
        double[] means = definition.Biofix is { } condition ? RunningMean.Over(Middles(series), condition.MeanDays) : [];
        var years = new List<HeatSumYear>(starts.Count);
        for (int i = 0; i < starts.Count; i++)
        {
            int end = i + 1 < starts.Count ? starts[i + 1] : series.Count;
            int first = starts[i];
            if (definition.Biofix is { } biofix)
            {
                // A mean that is not known ends the search too: nobody can say that it had not passed.
                while (first < end && means[first] < biofix.Passes.Celsius) first++;
            }

            bool hidden = definition.Biofix is not null && first < end && double.IsNaN(means[first]);
            years.Add(new HeatSumYear(starts[i], first, end, hidden));
        }

        return years;
    }

    /// <summary>The same in dates.</summary>
    public HeatSumSeason ToSeason(DailySeries series) =>
        new(series.DayAt(ZeroFrom), CountsFrom < End && !IsHidden ? series.DayAt(CountsFrom) : null);

    private static List<int> StartsIn(DailySeries series, AnnualDay start)
    {
        var starts = new List<int>();
        for (int year = series.FirstDay.Year; year <= series.LastDay.Year; year++)
        {
            DateOnly day = start.In(year);
            if (series.Holds(day)) starts.Add(series.IndexOf(day));
        }

        return starts;
    }

    private static double[] Middles(DailySeries series)
    {
        ReadOnlySpan<double> minimum = series.MinimumAirC;
        ReadOnlySpan<double> maximum = series.MaximumAirC;
        var middles = new double[series.Count];
        for (int i = 0; i < middles.Length; i++) middles[i] = (minimum[i] + maximum[i]) / 2.0;
        return middles;
    }
}
