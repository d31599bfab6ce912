using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Agronomy.Windows;

/// <summary>Heat of the air gathered after a day, summed once for all days that follow.</summary>
internal sealed class HeatAfterDay
{
    private readonly DailySeries series;
    private readonly HeatSince heat;
    private readonly DateOnly after;

    /// <summary>The sum at the end of each day, each with the next day's minimum, as it stands once that is known.</summary>
    private readonly double[] settled;

    public HeatAfterDay(DailySeries series, HeatSince heat, DateOnly after)
    {
        this.series = series;
        this.heat = heat;
        this.after = after;
        settled = new double[series.Count];
        int first = series.IndexOf(after) + 1;
        double sum = first < 0 ? double.NaN : 0;
        for (int i = Math.Max(0, first); i < series.Count; i++)
        {
            sum += OnDay(i, i + 1 < series.Count ? series.MinimumAirC[i + 1] : double.NaN);
            settled[i] = sum;
        }
    }

    /// <summary>The heat gathered by the end of a day as known on it [°C-days]: its own minimum stands in for the next one. NaN where a day is missing.</summary>
    public double Until(DateOnly day)
    {
        if (day <= after) return 0;
        int today = series.IndexOf(day);
        if ((uint)today >= (uint)series.Count) return double.NaN;
        double before = after.AddDays(1) == day ? 0 : today == 0 ? double.NaN : settled[today - 1];
        return before + OnDay(today, double.NaN);
    }

    private double OnDay(int index, double nextMinimumC)
    {
        double minimum = series.MinimumAirC[index];
        double maximum = series.MaximumAirC[index];
        if (double.IsNaN(minimum) || double.IsNaN(maximum)) return double.NaN;
        return DailyHeat.DegreeDays(heat.Method, DegreeDayCutoff.None, minimum, maximum, double.IsNaN(nextMinimumC) ? minimum : nextMinimumC, heat.Base.Celsius, null);
    }
}
