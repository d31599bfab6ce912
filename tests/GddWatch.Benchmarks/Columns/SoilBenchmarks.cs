using BenchmarkDotNet.Attributes;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Soil;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Benchmarks.Columns;

/// <summary>Soil temperature over 30 years of one site; times are for one day of one site.</summary>
[MemoryDiagnoser]
public class SoilBenchmarks
{
    private const int Days = 10_957;

    private readonly double[] meanC = new double[Days];
    private readonly double[] deviationC = new double[Days];
    private readonly Depth depth = Depth.FromCentimetres(5);
    private readonly KattererAndren2009 twoLineModel = new();
    private DailySeries withRain = null!;
    private DailySeries airAlone = null!;

    [GlobalSetup]
    public void InventWeather()
    {
        withRain = Invent(rain: true);
        airAlone = Invent(rain: false);
    }

    [Benchmark(Baseline = true, OperationsPerInvoke = Days)]
    public void Default_model_with_precipitation() => LayeredTurfSoil.Default.Estimate(withRain, 42, depth, meanC, deviationC);

    [Benchmark(OperationsPerInvoke = Days)]
    public void Default_model_from_air_alone() => LayeredTurfSoil.Default.Estimate(airAlone, 42, depth, meanC, deviationC);

    [Benchmark(OperationsPerInvoke = Days)]
    public void Katterer_and_Andren_for_comparison() => twoLineModel.Estimate(withRain, 42, depth, meanC, deviationC);

    /// <summary>An invented climate with persistent departures, rain on a third of days and snow in winter.</summary>
    private static DailySeries Invent(bool rain)
    {
        var chance = new Random(1991);
        var builder = new DailySeriesBuilder();
        double departure = 0;
        for (int i = 0; i < Days; i++)
        {
            DateOnly day = new DateOnly(1991, 1, 1).AddDays(i);
            departure = 0.7 * departure + 8 * chance.NextDouble() - 4;
            double mean = 10 + 13 * Math.Sin(2 * Math.PI * (i - 105) / 365.25) + departure;
            double half = 1 + 9 * chance.NextDouble();
            builder.Put(day, WeatherVariable.MinimumAirC, mean - half);
            builder.Put(day, WeatherVariable.MaximumAirC, mean + half);
            double wet = Math.Max(0, 30 * chance.NextDouble() - 20);
            if (rain) builder.Put(day, WeatherVariable.PrecipitationMm, wet);
        }

        return builder.Build()!;
    }
}
