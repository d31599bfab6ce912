using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Weather;
using Xunit;

namespace GddWatch.Agronomy.Tests.Heat.Published;

/// <summary>Science reference 1.8, season-level test (CALC): Tmean(d) = 11 + 13 sin(2π(d − 105)/365), extremes 6 °C to either side, base 10, upper 30 °C.</summary>
public class SeasonTests
{
    private static readonly DateOnly FirstDay = new(2023, 1, 1);

    [Theory]
    [InlineData(DegreeDayMethod.SimpleAverage, DegreeDayCutoff.None, 0.0000, 44.4586, 267.7803, 630.6816, 1697.3448, 132, 174, 176)]
    [InlineData(DegreeDayMethod.SingleTriangle, DegreeDayCutoff.None, 3.5686, 71.3978, 294.9708, 657.8721, 1751.7506, 128, 171, 174)]
    [InlineData(DegreeDayMethod.SingleSine, DegreeDayCutoff.None, 6.6577, 84.6532, 308.6911, 671.5924, 1779.1919, 126, 170, 173)]
    [InlineData(DegreeDayMethod.SingleSine, DegreeDayCutoff.Horizontal, 6.6577, 84.6532, 308.6911, 671.5924, 1779.1919, 126, 170, 173)]
    [InlineData(DegreeDayMethod.DoubleSine, DegreeDayCutoff.None, 6.6889, 85.1379, 310.4972, 674.2242, 1779.1783, 126, 170, 173)]
    [InlineData(DegreeDayMethod.AverageWithLimitedExtremes, DegreeDayCutoff.None, 17.1363, 123.7961, 350.0087, 712.9100, 1861.8462, 118, 167, 170)]
    public void A_year_on_a_sine_reaches_its_sums_and_thresholds_on_the_tabled_days(
        DegreeDayMethod method,
        DegreeDayCutoff cutoff,
        double onDay90,
        double onDay120,
        double onDay150,
        double onDay180,
        double onDay365,
        int firstDay200F,
        int firstDay970F,
        int firstDay1030F)
    {
        var definition = new HeatSumDefinition(
            Temperature.FromCelsius(10), Temperature.FromCelsius(30), method, cutoff, AnnualDay.Of(1, 1));
        HeatSums sums = HeatSum.Over(Year(), definition, Hemisphere.Northern, []);
        (int Day, double Sum)[] tabled = [(90, onDay90), (120, onDay120), (150, onDay150), (180, onDay180), (365, onDay365)];
        foreach ((int day, double sum) in tabled) Assert.Equal(sum, sums.CelsiusDays[day - 1], 0.5001e-4);
        Assert.Equal(firstDay200F, FirstDayAt(sums, DegreeDays.FromFahrenheitDays(200)));
        Assert.Equal(firstDay970F, FirstDayAt(sums, DegreeDays.FromFahrenheitDays(970)));
        Assert.Equal(firstDay1030F, FirstDayAt(sums, DegreeDays.FromFahrenheitDays(1030)));
    }

    private static int FirstDayAt(HeatSums sums, DegreeDays threshold) =>
        Array.FindIndex(sums.CelsiusDays, sum => sum >= threshold.CelsiusDays) + 1;

    /// <summary>The year and the day after it, whose minimum the double sine reads.</summary>
    private static DailySeries Year()
    {
        var minimum = new double[366];
        var maximum = new double[366];
        for (int i = 0; i < minimum.Length; i++)
        {
            double mean = 11 + 13 * Math.Sin(2 * Math.PI * (i + 1 - 105) / 365);
            minimum[i] = mean - 6;
            maximum[i] = mean + 6;
        }

        return SeriesOf.Days(FirstDay, minimum, maximum);
    }
}
