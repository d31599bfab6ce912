using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Windows;
using Xunit;

namespace GddWatch.Agronomy.Tests.Windows;

public sealed class SiteMetricsTests
{
    private static readonly HeatSumDefinition SoilSum = new(
        Temperature.FromCelsius(12), null, DegreeDayMethod.SimpleAverage, DegreeDayCutoff.None, AnnualDay.Of(1, 1), Depth.FromCentimetres(2.5));

    [Fact]
    public void A_soil_sum_that_starts_with_the_record_is_given_once_the_model_has_warmed_up_and_not_lost_for_the_season()
    {
        double[] sums = SiteMetrics.Of(Some.SmoothYears(2023, 1), Some.Site()).HeatSumColumn(SoilSum);
        Assert.Equal(double.NaN, sums[0]);
        Assert.False(double.IsNaN(sums[40]));
        Assert.InRange(sums[^1], 800, 2500);
    }

    [Fact]
    public void Cutting_the_record_changes_no_soil_sum_before_the_cut()
    {
        double[] whole = SiteMetrics.Of(Some.SmoothYears(2023, 1), Some.Site()).HeatSumColumn(SoilSum);
        for (int days = 1; days < 60; days++)
        {
            double[] cut = SiteMetrics.Of(Some.SmoothYears(2023, 1).Until(new DateOnly(2023, 1, 1).AddDays(days - 1))!, Some.Site()).HeatSumColumn(SoilSum);
            Assert.Equal(whole[..days], cut);
        }
    }

    [Fact]
    public void The_day_until_which_the_weather_is_known_is_a_measured_one_and_not_a_filled_one()
    {
        SiteMetrics metrics = SiteMetrics.Of(Some.SmoothYears(2023, 1), Some.Site());
        Assert.Equal(new DateOnly(2023, 12, 31), metrics.WeatherThrough);
    }
}
