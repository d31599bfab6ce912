using GddWatch.Agronomy.Weather;

namespace GddWatch.Agronomy.Tests.Heat;

/// <summary>Series made from numbers.</summary>
internal static class SeriesOf
{
    /// <summary>Consecutive days from their minima and maxima; a day with NaN still belongs to the series.</summary>
    public static DailySeries Days(DateOnly firstDay, ReadOnlySpan<double> minimumC, ReadOnlySpan<double> maximumC)
    {
        var builder = new DailySeriesBuilder();
        for (int i = 0; i < minimumC.Length; i++)
        {
            builder.Put(firstDay.AddDays(i), WeatherVariable.MinimumAirC, minimumC[i]);
            builder.Put(firstDay.AddDays(i), WeatherVariable.MaximumAirC, maximumC[i]);
        }

        return builder.Build()!;
    }

    /// <summary>Days that are all alike.</summary>
    public static DailySeries Alike(DateOnly firstDay, int days, double minimumC, double maximumC)
    {
        var minima = new double[days];
        var maxima = new double[days];
        Array.Fill(minima, minimumC);
        Array.Fill(maxima, maximumC);
        return Days(firstDay, minima, maxima);
    }
}
