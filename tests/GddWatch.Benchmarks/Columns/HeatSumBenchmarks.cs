using BenchmarkDotNet.Attributes;
using GddWatch.Agronomy.Heat;

namespace GddWatch.Benchmarks.Columns;

/// <summary>
/// Heat sums over a column of 30 years on one core. To reach: single sine at 50 million site-days a second, which is 219 µs a column; nothing allocated.
/// </summary>
[MemoryDiagnoser]
public class HeatSumBenchmarks
{
    private const int FirstYear = 1995;
    private const int Years = 30;

    private double[] minimumC = [];
    private double[] maximumC = [];
    private double[] sums = [];
    private int[] starts = [];

    /// <summary>How the days lie to the thresholds of 10 and 30 °C.</summary>
    [Params(Weather.Seasonal, Weather.EveryDayCrossesBoth)]
    public Weather Days { get; set; }

    [GlobalSetup]
    public void Setup()
    {
        DateOnly first = new(FirstYear, 1, 1);
        int days = new DateOnly(FirstYear + Years, 1, 1).DayNumber - first.DayNumber;
        starts = [.. Enumerable.Range(FirstYear, Years).Select(year => new DateOnly(year, 1, 1).DayNumber - first.DayNumber)];
        (minimumC, maximumC, sums) = (new double[days], new double[days], new double[days]);
        var chance = new Random(20_260_412);
        double spell = 0;
        for (int i = 0; i < days; i++)
        {
            // A mid-latitude year: mean 11 °C, 13 to either side, spells of 4 °C that last some days, a range of about 10 °C.
            spell = 0.7 * spell + 2.9 * (chance.NextDouble() + chance.NextDouble() + chance.NextDouble() - 1.5) * 2;
            double middle = 11 + 13 * Math.Sin(2 * Math.PI * (i - 105) / 365.25) + spell;
            double halfRange = 2 + 6 * chance.NextDouble();
            if (Days == Weather.EveryDayCrossesBoth) (middle, halfRange) = (20 + 2 * chance.NextDouble(), 14 + 4 * chance.NextDouble());
            minimumC[i] = middle - halfRange;
            maximumC[i] = middle + halfRange;
        }
    }

    [Benchmark(Baseline = true)]
    public double SimpleAverage() => Sum(DegreeDayMethod.SimpleAverage, DegreeDayCutoff.None);

    [Benchmark]
    public double SingleSine() => Sum(DegreeDayMethod.SingleSine, DegreeDayCutoff.None);

    [Benchmark]
    public double SingleSineHorizontal() => Sum(DegreeDayMethod.SingleSine, DegreeDayCutoff.Horizontal);

    [Benchmark]
    public double SingleSineVertical() => Sum(DegreeDayMethod.SingleSine, DegreeDayCutoff.Vertical);

    [Benchmark]
    public double DoubleSineHorizontal() => Sum(DegreeDayMethod.DoubleSine, DegreeDayCutoff.Horizontal);

    [Benchmark]
    public double SingleTriangleHorizontal() => Sum(DegreeDayMethod.SingleTriangle, DegreeDayCutoff.Horizontal);

    /// <summary>The same sum day by day through the method's public function, as a reader would write it first.</summary>
    [Benchmark]
    public double SingleSineHorizontalDayByDay()
    {
        double sum = 0;
        for (int i = 0; i < sums.Length; i++)
        {
            sum += Agronomy.Heat.SingleSine.DegreeDays(DegreeDayCutoff.Horizontal, minimumC[i], maximumC[i], 10, 30);
            sums[i] = sum;
        }

        return sums[^1];
    }

    private double Sum(DegreeDayMethod method, DegreeDayCutoff cutoff)
    {
        HeatSum.Accumulate(method, cutoff, minimumC, maximumC, 10, 30, starts, sums);
        return sums[^1];
    }
}
