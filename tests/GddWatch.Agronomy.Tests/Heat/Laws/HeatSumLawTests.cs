using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Weather;
using Xunit;

namespace GddWatch.Agronomy.Tests.Heat.Laws;

public class HeatSumLawTests
{
    private static readonly DateOnly FirstDay = new(2020, 12, 20);

    public static TheoryData<DegreeDayMethod, DegreeDayCutoff> MethodsAndCutoffs => DailyHeatTests.MethodsAndCutoffs;

    [Theory]
    [MemberData(nameof(MethodsAndCutoffs))]
    public void A_sum_is_the_sum_of_its_days(DegreeDayMethod method, DegreeDayCutoff cutoff)
    {
        (double[] minimum, double[] maximum) = RandomDays.Column(2_003, stream: 1);
        var sums = new double[minimum.Length];
        HeatSum.Accumulate(method, cutoff, minimum, maximum, 10, 25, [0], sums);
        double sum = 0;
        for (int i = 0; i < sums.Length; i++)
        {
            double next = i + 1 < sums.Length ? minimum[i + 1] : minimum[i];
            sum += DailyHeat.DegreeDays(method, cutoff, minimum[i], maximum[i], next, 10, 25);
            Assert.Equal(sum, sums[i], 1e-12 * Math.Max(1, sum));
        }
    }

    [Theory]
    [MemberData(nameof(MethodsAndCutoffs))]
    public void A_fahrenheit_sum_is_nine_fifths_of_the_celsius_sum(DegreeDayMethod method, DegreeDayCutoff cutoff)
    {
        // Tenths of a °F, as records in °F hold them; thresholds 50 and 86 °F.
        (double[] celsius, double[] warmest) = RandomDays.Column(3_000, stream: 2);
        double[] minimumF = [.. celsius.Select(t => Math.Round(t * 18 + 320) / 10)];
        double[] maximumF = [.. warmest.Select(t => Math.Round(t * 18 + 320) / 10)];
        double[] minimumC = [.. minimumF.Select(t => Temperature.FromFahrenheit(t).Celsius)];
        double[] maximumC = [.. maximumF.Select(t => Temperature.FromFahrenheit(t).Celsius)];
        var sumsF = new double[minimumF.Length];
        var sumsC = new double[minimumF.Length];
        HeatSum.Accumulate(method, cutoff, minimumF, maximumF, 50, 86, [0], sumsF);
        HeatSum.Accumulate(method, cutoff, minimumC, maximumC, 10, 30, [0], sumsC);
        for (int i = 0; i < sumsC.Length; i++)
        {
            Assert.Equal(sumsF[i], DegreeDays.FromCelsiusDays(sumsC[i]).FahrenheitDays, 1e-12 * Math.Max(100, sumsF[i]));
        }

        Assert.True(sumsC[^1] > 1_000);
    }

    [Theory]
    [MemberData(nameof(MethodsAndCutoffs))]
    public void Cutting_a_series_changes_no_sum_but_the_last_days_where_that_is_called_provisional(DegreeDayMethod method, DegreeDayCutoff cutoff)
    {
        DailySeries whole = Holed(800);
        foreach (BiofixCondition? biofix in new[] { null, new BiofixCondition(5, Temperature.FromCelsius(14)) })
        {
            var definition = new HeatSumDefinition(
                Temperature.FromCelsius(10), Temperature.FromCelsius(25), method, cutoff, AnnualDay.Of(1, 1), null, biofix);
            double[] all = HeatSum.Column(whole, definition, Hemisphere.Northern, []);
            for (int days = 1; days <= whole.Count; days += days < 60 ? 1 : 7)
            {
                HeatSums cut = HeatSum.Over(whole.Until(whole.DayAt(days - 1))!, definition, Hemisphere.Northern, []);
                int settled = cut.LastDayIsProvisional ? days - 1 : days;
                Assert.Equal(days, cut.CelsiusDays.Length);
                Assert.Equal(all[..settled], cut.CelsiusDays[..settled]);
                Assert.Equal(double.IsNaN(all[days - 1]), double.IsNaN(cut.CelsiusDays[^1]));
            }
        }
    }

    [Theory]
    [MemberData(nameof(MethodsAndCutoffs))]
    public void After_a_missing_day_there_is_no_sum_until_the_next_start_and_then_the_same_as_ever(DegreeDayMethod method, DegreeDayCutoff cutoff)
    {
        (double[] minimum, double[] maximum) = RandomDays.Column(40, stream: 3);
        int[] starts = [3, 25];
        var whole = new double[40];
        HeatSum.Accumulate(method, cutoff, minimum, maximum, 10, 25, starts, whole);
        Assert.All(whole[..3], sum => Assert.True(double.IsNaN(sum)));
        Assert.All(whole[3..], sum => Assert.False(double.IsNaN(sum)));
        for (int missing = 0; missing < 40; missing++)
        {
            foreach (double[] column in new[] { minimum, maximum })
            {
                double was = column[missing];
                column[missing] = double.NaN;
                var sums = new double[40];
                HeatSum.Accumulate(method, cutoff, minimum, maximum, 10, 25, starts, sums);
                column[missing] = was;
                int season = missing >= 25 ? 25 : 3;
                int seasonEnd = missing >= 25 ? 40 : 25;
                for (int i = 0; i < 40; i++)
                {
                    if (i >= Math.Max(missing, season) && i < seasonEnd && missing >= 3) Assert.True(double.IsNaN(sums[i]), $"day {i} without day {missing}");
                    else if (i != missing - 1) Assert.Equal(Daily(whole, i, starts), Daily(sums, i, starts), 1e-12);
                }
            }
        }
    }

    private static double Daily(double[] sums, int day, int[] starts) =>
        day == 0 || starts.Contains(day) ? sums[day] : sums[day] - sums[day - 1];

    /// <summary>A series with seasons, some missing days and some halves of days.</summary>
    private static DailySeries Holed(int days)
    {
        (double[] minimum, double[] maximum) = RandomDays.Column(days, stream: 4);
        for (int i = 0; i < days; i++)
        {
            double season = 12 * Math.Sin(2 * Math.PI * (i - 115) / 365.25);
            minimum[i] = 10 + season + (minimum[i] - 15) / 5;
            maximum[i] = Math.Max(minimum[i], 14 + season + (maximum[i] - 15) / 4);
        }

        foreach (int hole in new[] { 210, 211, 212, 640 }) minimum[hole] = double.NaN;
        foreach (int hole in new[] { 212, 213, 700 }) maximum[hole] = double.NaN;
        return SeriesOf.Days(FirstDay, minimum, maximum);
    }
}
