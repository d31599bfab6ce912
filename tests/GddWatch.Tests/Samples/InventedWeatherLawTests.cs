using GddWatch.InventedWeather;
using Xunit;

namespace GddWatch.Tests.Samples;

/// <summary>
/// Whether the invented weather follows the model it is said to follow: over the thirteen years that are committed, within
/// what chance allows so short a span, and over two centuries of the same climate, closely.
/// </summary>
public sealed class InventedWeatherLawTests
{
    public static TheoryData<string> Sites => [.. AlderReach.Climates.Select(climate => climate.Id)];

    /// <summary>Site and number of years: the committed ones, and a long run whose seed has nothing to do with theirs.</summary>
    public static TheoryData<string, int> Runs
    {
        get
        {
            TheoryData<string, int> runs = [];
            foreach (InventedClimate climate in AlderReach.Climates)
            {
                runs.Add(climate.Id, 13);
                runs.Add(climate.Id, 200);
            }

            return runs;
        }
    }

    // SEEN: output of the reference program of PCG's author for seed 42, stream 54 (imneme/pcg-c, check-pcg32.out).
    [Fact]
    public void Chance_is_the_published_generator()
    {
        SeededRandom chance = new(seed: 42, stream: 54);

        Assert.Equal(
            [0xa15c02b7, 0x7b47f409, 0xba1d3330, 0x83d2f293, 0xbfa4784b, 0xcbed606e],
            Enumerable.Range(0, 6).Select(_ => chance.NextBits()));
    }

    // C.W. Richardson and D.A. Wright (1984), WGEN: a model for generating daily weather variables, USDA ARS-8: its
    // correlations (MEMORY) and the A and B that it gives for them (SEEN in several public copies). Its third variable,
    // radiation, hardly enters the maximum's row and B; in the minimum's row of A it does, so that row is not compared.
    [Fact]
    public void Departures_have_the_coefficients_that_were_published_for_such_correlations()
    {
        DayToDay published = new(SameDay: 0.633, MaxToMax: 0.621, MinToMin: 0.674, MinToNextMax: 0.445, MaxToNextMin: 0.563);

        DayToDay.Coefficients step = published.Solve();

        Assert.Equal(0.567, step.A11, 0.0015);
        Assert.Equal(0.086, step.A12, 0.0015);
        Assert.Equal(0.781, step.B11, 0.0015);
        Assert.Equal(0.328, step.B21, 0.0015);
        Assert.Equal(0.637, step.B22, 0.0015);
    }

    [Fact]
    public void Correlations_that_no_weather_can_have_are_refused() =>
        Assert.Throws<InvalidOperationException>(
            () => new DayToDay(SameDay: 0.1, MaxToMax: 0.9, MinToMin: 0.9, MinToNextMax: 0.9, MaxToNextMin: 0.9).Solve());

    [Theory]
    [MemberData(nameof(Runs))]
    public void Wet_days_are_as_many_as_the_chain_settles_to(string id, int years)
    {
        (InventedClimate climate, List<InventedDay> days) = Run(id, years);
        double expected = days.Average(day => climate.WetShareOn(day.Date));
        // A first-order chain's days count as fewer independent ones: variance times (1 + r) / (1 - r), with r about 0.25.
        double chance = Math.Sqrt(expected * (1 - expected) * 1.25 / 0.75 / days.Count);

        Assert.Equal(expected, ShareOfWet(days), 4 * chance);
    }

    [Theory]
    [MemberData(nameof(Runs))]
    public void Wet_days_follow_wet_days_as_often_as_the_chain_says(string id, int years)
    {
        (InventedClimate climate, List<InventedDay> days) = Run(id, years);
        List<InventedDay> afterWet = [.. days.Skip(1).Where((_, i) => days[i].RainMm > 0)];
        List<InventedDay> afterDry = [.. days.Skip(1).Where((_, i) => days[i].RainMm == 0)];

        Assert.Equal(afterWet.Average(day => climate.WetAfterWet.On(day.Date)), ShareOfWet(afterWet), 4 * 0.5 / Math.Sqrt(afterWet.Count));
        Assert.Equal(afterDry.Average(day => climate.WetAfterDry.On(day.Date)), ShareOfWet(afterDry), 4 * 0.5 / Math.Sqrt(afterDry.Count));
    }

    [Theory]
    [MemberData(nameof(Runs))]
    public void Rain_on_wet_days_has_the_configured_mean_and_spread(string id, int years)
    {
        (InventedClimate climate, List<InventedDay> days) = Run(id, years);
        List<double> parts =
        [
            .. days.Where(day => day.RainMm > 0).Select(day =>
                (day.RainMm - WeatherInventor.LeastRainMm) / (climate.RainOnWetDayMm.On(day.Date) - WeatherInventor.LeastRainMm)),
        ];
        double mean = parts.Average();
        double variance = parts.Average(part => (part - mean) * (part - mean));
        // Half p, half 2 - p times an exponential of mean 1: the mean is 1, the variance p² + (2 - p)² - 1. CALC
        double expected = Math.Pow(WeatherInventor.ShowerPart, 2) + Math.Pow(2 - WeatherInventor.ShowerPart, 2) - 1;

        Assert.Equal(1, mean, 4 * Math.Sqrt(expected / parts.Count));
        Assert.Equal(expected, variance, 0.1 + (30 / Math.Sqrt(parts.Count)));
    }

    [Theory]
    [MemberData(nameof(Runs))]
    public void Each_season_has_its_configured_mean_temperature(string id, int years)
    {
        (InventedClimate climate, List<InventedDay> days) = Run(id, years);
        foreach (IGrouping<int, InventedDay> season in days.GroupBy(day => day.Date.Month % 12 / 3))
        {
            List<double> yearly = [.. season.GroupBy(day => day.Date.Year).Select(year => year.Average(day => Departure(climate, day)))];
            double mean = yearly.Average();
            double chance = Math.Sqrt(yearly.Average(value => (value - mean) * (value - mean)) / (yearly.Count - 1));

            Assert.True(Math.Abs(mean) <= (4 * chance) + 0.02, $"Season {season.Key}: {mean:0.00} °C off, chance {chance:0.00} °C.");
        }
    }

    [Theory]
    [MemberData(nameof(Runs))]
    public void Warm_days_follow_warm_days_as_the_model_says(string id, int years)
    {
        (InventedClimate climate, List<InventedDay> days) = Run(id, years);
        double[] maxima = [.. days.Select(day => MaximumInSpreads(climate, day))];
        double[] minima = [.. days.Select(day => MinimumInSpreads(climate, day))];
        // Sampling, and the least range and the bound, which the correlations of the model do not know.
        double slack = 0.03 + (3 / Math.Sqrt(days.Count));

        Assert.Equal(WithSlow(climate.Departures.MaxToMax, 1), Correlation(maxima[..^1], maxima[1..]), slack);
        Assert.Equal(WithSlow(climate.Departures.MinToMin, 1), Correlation(minima[..^1], minima[1..]), slack);
        Assert.Equal(WithSlow(climate.Departures.SameDay, 0), Correlation(maxima, minima), slack);
        Assert.InRange(Correlation(maxima[..^1], maxima[1..]), 0.55, 0.75);
    }

    // What is left after a month comes from the slow anomaly alone; thirteen years are too few to see so weak a correlation.
    [Theory]
    [MemberData(nameof(Sites))]
    public void A_slow_anomaly_outlasts_the_passing_weather(string id)
    {
        (InventedClimate climate, List<InventedDay> days) = Run(id, years: 200);
        double[] maxima = [.. days.Select(day => MaximumInSpreads(climate, day))];

        Assert.Equal(WithSlow(0, 30), Correlation(maxima[..^30], maxima[30..]), 0.02);
    }

    private static double WithSlow(double passing, int daysLater) =>
        ((1 - WeatherInventor.SlowShare) * passing) + (WeatherInventor.SlowShare * Math.Pow(WeatherInventor.SlowPersistence, daysLater));

    private static double MaximumInSpreads(InventedClimate climate, InventedDay day) =>
        (day.MaximumC - climate.MeanMaximumC(day.Date, day.RainMm > 0)) / climate.SpreadOfMaximumC.On(day.Date);

    private static double MinimumInSpreads(InventedClimate climate, InventedDay day) =>
        (day.MinimumC - climate.MeanMinimumC(day.Date, day.RainMm > 0)) / climate.SpreadOfMinimumC.On(day.Date);

    private static double Departure(InventedClimate climate, InventedDay day) =>
        (day.MaximumC + day.MinimumC - climate.MeanMaximumC(day.Date, day.RainMm > 0) - climate.MeanMinimumC(day.Date, day.RainMm > 0)) / 2;

    private static double ShareOfWet(List<InventedDay> days) => days.Count(day => day.RainMm > 0) / (double)days.Count;

    private static double Correlation(double[] left, double[] right)
    {
        double leftMean = left.Average();
        double rightMean = right.Average();
        double together = left.Zip(right, (a, b) => (a - leftMean) * (b - rightMean)).Sum();
        return together / Math.Sqrt(left.Sum(a => (a - leftMean) * (a - leftMean)) * right.Sum(b => (b - rightMean) * (b - rightMean)));
    }

    private static (InventedClimate Climate, List<InventedDay> Days) Run(string id, int years)
    {
        InventedClimate climate = AlderReach.Climates.Single(one => string.Equals(one.Id, id, StringComparison.Ordinal));
        bool committed = years == AlderReach.LastDay.Year - AlderReach.FirstDay.Year + 1;
        DateOnly last = committed ? AlderReach.LastDay : AlderReach.FirstDay.AddYears(years).AddDays(-1);
        ulong seed = committed ? AlderReach.Seed : 1981;
        return (climate, [.. WeatherInventor.Invent(climate, AlderReach.FirstDay, last, seed)]);
    }
}
