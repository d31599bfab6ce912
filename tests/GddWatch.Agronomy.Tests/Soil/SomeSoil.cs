using CsCheck;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Soil;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Agronomy.Tests.Soil;

/// <summary>Weather for soil models, made up, and short ways to ask them.</summary>
internal static class SomeSoil
{
    public static readonly Depth FiveCm = Depth.FromCentimetres(5);

    /// <summary>Random but always the same days: a smooth year with persistent departures, ranges, rain, and holes in each.</summary>
    public static readonly Gen<DailySeries> Weather =
        from days in Gen.Int[40, 500]
        from draws in Gen.Select(Gen.Double[-4, 4], Gen.Double[0, 24], Gen.Double[-30, 40], Gen.Int[0, 19]).Array[days]
        from start in Gen.Int[0, 1200]
        select Series(new DateOnly(2019, 1, 1).AddDays(start), draws);

    public static SoilTemperatureColumns Of(ISoilTemperatureModel model, DailySeries series, double latitude = 40, double depthCm = 5) =>
        SoilTemperatureColumns.Estimate(model, series, latitude, Depth.FromCentimetres(depthCm));

    /// <summary>Days from their mean, with a range of 12 °C; rain by the day's number where given.</summary>
    public static DailySeries Days(DateOnly firstDay, ReadOnlySpan<double> meanC, Func<int, double>? rainMm = null)
    {
        var builder = new DailySeriesBuilder();
        for (int i = 0; i < meanC.Length; i++)
        {
            builder.Put(firstDay.AddDays(i), WeatherVariable.MinimumAirC, meanC[i] - 6);
            builder.Put(firstDay.AddDays(i), WeatherVariable.MaximumAirC, meanC[i] + 6);
            if (rainMm is not null) builder.Put(firstDay.AddDays(i), WeatherVariable.PrecipitationMm, rainMm(i + 1));
        }

        return builder.Build()!;
    }

    /// <summary>The made-up year of the science reference, section 1.8: 11 + 13 sin(2π(d − 105)/365), so many days from 1
    /// January.</summary>
    public static double[] SmoothYear(int days) =>
        [.. Enumerable.Range(1, days).Select(d => 11 + 13 * Math.Sin(2 * Math.PI * (d - 105) / 365))];

    private static DailySeries Series(DateOnly firstDay, (double Push, double Range, double Rain, int Hole)[] draws)
    {
        var builder = new DailySeriesBuilder();
        double departure = 0;
        for (int i = 0; i < draws.Length; i++)
        {
            DateOnly day = firstDay.AddDays(i);
            departure = 0.7 * departure + draws[i].Push;
            double mean = Some.SmoothMeanC(day) + departure;
            bool hole = draws[i].Hole == 0;
            builder.Put(day, WeatherVariable.MinimumAirC, hole ? double.NaN : mean - draws[i].Range / 2);
            builder.Put(day, WeatherVariable.MaximumAirC, mean + draws[i].Range / 2);
            builder.Put(day, WeatherVariable.PrecipitationMm, draws[i].Hole == 1 ? double.NaN : Math.Max(0, draws[i].Rain));
        }

        return builder.Build()!;
    }
}
