using CsCheck;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Soil;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Weather.Filling;
using Xunit;

namespace GddWatch.Agronomy.Tests.Soil;

public sealed class LayeredTurfSoilTests
{
    private static readonly DateOnly NewYear = new(2023, 1, 1);

    [Theory]
    [InlineData(31, 5, -0.978401)]
    [InlineData(100, 2, 9.722482)]
    [InlineData(100, 5, 9.518562)]
    [InlineData(100, 10, 9.220899)]
    [InlineData(100, 20, 8.755648)]
    [InlineData(365, 5, 0.686337)]
    public void A_year_through_the_model_goes_as_in_the_reference_implementation(int day, double depthCm, double expectedC)
    {
        // CALC, the same year as in TurfSoilLayersTests, here with the calendar, the depth and the columns of a series.
        DailySeries series = SomeSoil.Days(NewYear, SomeSoil.SmoothYear(365), d => d % 5 == 0 ? 10 : 0);
        Assert.Equal(expectedC, SomeSoil.Of(LayeredTurfSoil.Default, series, 40, depthCm).MeanC[day - 1], 1e-5);
    }

    [Fact]
    public void Nothing_is_said_before_fourteen_days_are_known_and_the_deviation_falls_from_then_on()
    {
        SoilTemperatureColumns columns = SomeSoil.Of(LayeredTurfSoil.Default, SomeSoil.Days(NewYear, SomeSoil.SmoothYear(80)));
        Assert.All(columns.MeanC.Take(13), value => Assert.True(double.IsNaN(value)));
        Assert.All(columns.DeviationC.Take(13), value => Assert.True(double.IsNaN(value)));
        Assert.All(columns.MeanC.Skip(13), value => Assert.True(double.IsFinite(value)));
        Assert.True(columns.DeviationC[13] > columns.DeviationC[40]);
    }

    [Fact]
    public void Missing_days_before_the_first_known_one_change_nothing()
    {
        double[] year = SomeSoil.SmoothYear(120);
        double[] late = [.. Enumerable.Repeat(double.NaN, 30), .. year];
        SoilTemperatureColumns straight = SomeSoil.Of(LayeredTurfSoil.Default, SomeSoil.Days(NewYear, year));
        SoilTemperatureColumns after = SomeSoil.Of(LayeredTurfSoil.Default, SomeSoil.Days(NewYear.AddDays(-30), late));
        Assert.Equal(straight.MeanC, after.MeanC.Skip(30));
        Assert.Equal(straight.DeviationC, after.DeviationC.Skip(30));
    }

    [Fact]
    public void A_hole_is_bridged_for_twenty_days_with_growing_deviation_and_then_nothing_is_said_until_fourteen_days_are_known_again()
    {
        double[] year = SomeSoil.SmoothYear(300);
        for (int i = 150; i < 180; i++) year[i] = double.NaN;
        SoilTemperatureColumns columns = SomeSoil.Of(LayeredTurfSoil.Default, SomeSoil.Days(NewYear, year));
        for (int i = 150; i < 170; i++)
        {
            Assert.True(double.IsFinite(columns.MeanC[i]));
            Assert.True(columns.DeviationC[i] > columns.DeviationC[i - 1]);
        }

        for (int i = 170; i < 193; i++) Assert.True(double.IsNaN(columns.MeanC[i]) && double.IsNaN(columns.DeviationC[i]));
        Assert.True(double.IsFinite(columns.MeanC[193]));
        Assert.True(columns.DeviationC[193] < columns.DeviationC[169]);
    }

    [Fact]
    public void A_day_that_a_filling_has_put_in_counts_as_missing_because_it_knows_nothing_of_the_day()
    {
        double[] year = SomeSoil.SmoothYear(200);
        year[150] = year[151] = double.NaN;
        DailySeries holed = SomeSoil.Days(NewYear, year);
        SoilTemperatureColumns asMissing = SomeSoil.Of(LayeredTurfSoil.Default, holed);
        SoilTemperatureColumns asFilled = SomeSoil.Of(LayeredTurfSoil.Default, LastKnownDay.Fill(holed));
        Assert.Equal(asMissing.MeanC, asFilled.MeanC);
        Assert.Equal(asMissing.DeviationC, asFilled.DeviationC);
    }

    [Theory]
    [InlineData(11, 1.0)]
    [InlineData(13, 1.0)]
    [InlineData(14.5, 1.75)]
    [InlineData(16, 2.5)]
    [InlineData(20, 2.5)]
    public void Unknown_precipitation_widens_the_deviation_where_the_daily_range_is_large(double rangeC, double widening)
    {
        // The model's rule for unknown rain, 2.5 mm · clip((21 − range)/8, 0.05, 1.5), is here given as known rain, so that only the widening
        // 1 + 1.5·clip((range − 13)/3, 0, 1) is left. It starts from a range of 10 °C, and the climate's balance remembers that start for years:
        // hence the tolerance.
        double rainMm = 2.5 * Math.Clamp((21 - rangeC) / 8, 0.05, 1.5);
        Assert.Equal(widening, Last(double.NaN) / Last(rainMm), 1e-3);

        double Last(double dailyRainMm)
        {
            var builder = new DailySeriesBuilder();
            double[] year = SomeSoil.SmoothYear(2500);
            for (int i = 0; i < year.Length; i++)
            {
                builder.Put(NewYear.AddDays(i), WeatherVariable.MinimumAirC, year[i] - rangeC / 2);
                builder.Put(NewYear.AddDays(i), WeatherVariable.MaximumAirC, year[i] + rangeC / 2);
                builder.Put(NewYear.AddDays(i), WeatherVariable.PrecipitationMm, dailyRainMm);
            }

            return SomeSoil.Of(LayeredTurfSoil.Default, builder.Build()!).DeviationC[^1];
        }
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_constant_that_is_no_number_is_refused_with_its_name_and_value(double value)
    {
        var refusal = Assert.Throws<ArgumentOutOfRangeException>(() => new LayeredTurfSoilCoefficients { StoreMm = value });
        Assert.Equal("StoreMm", refusal.ParamName);
        Assert.Equal(value, refusal.ActualValue);
        Assert.Throws<ArgumentOutOfRangeException>(() => new LayeredTurfSoilCoefficients { FrostShare = value });
        Assert.Throws<ArgumentOutOfRangeException>(() => new ZhengHuntRunning1993(interceptC: value));
    }

    [Fact]
    public void Snow_holds_the_soil_near_freezing_while_the_air_is_far_below()
    {
        // Common practice: grass under 20 cm of snow hardly freezes at -15 °C.
        double[] winter = [.. Enumerable.Repeat(4.0, 60), .. Enumerable.Repeat(-1.0, 20), .. Enumerable.Repeat(-15.0, 30)];
        double snowed = AtTheEnd(d => d is > 60 and <= 80 ? 4 : 0);
        double bare = AtTheEnd(_ => 0);
        Assert.InRange(snowed, -2.5, 1);
        Assert.True(bare < snowed - 1.5);

        double AtTheEnd(Func<int, double> rainMm) =>
            SomeSoil.Of(LayeredTurfSoil.Default, SomeSoil.Days(new DateOnly(2023, 11, 1), winter, rainMm), 45).MeanC[^1];
    }

    [Fact]
    public void A_known_forecast_day_is_used_like_a_measured_one()
    {
        double[] year = SomeSoil.SmoothYear(120);
        DailySeries series = SomeSoil.Days(NewYear, year);
        var marks = new Mark[series.Count];
        marks[^1] = Mark.Forecast;
        DailySeries forecast = series.WithAirTemperature(series.MinimumAirC.ToArray(), series.MaximumAirC.ToArray(), marks, marks);
        Assert.Equal(SomeSoil.Of(LayeredTurfSoil.Default, series).MeanC[^1], SomeSoil.Of(LayeredTurfSoil.Default, forecast).MeanC[^1]);
    }

    [Fact]
    public void Thirty_years_are_estimated_without_allocating_anything_for_a_day()
    {
        DailySeries series = SomeSoil.Days(new DateOnly(1991, 1, 1), SomeSoil.SmoothYear(10_957), _ => 2);
        var mean = new double[series.Count];
        var deviation = new double[series.Count];
        LayeredTurfSoil.Default.Estimate(series, 40, SomeSoil.FiveCm, mean, deviation);
        long before = GC.GetAllocatedBytesForCurrentThread();
        LayeredTurfSoil.Default.Estimate(series, 40, SomeSoil.FiveCm, mean, deviation);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 1000);
    }

    [Fact]
    public void All_depths_at_once_are_what_each_depth_alone_is_and_going_on_from_a_stand_is_what_the_whole_is() =>
        SomeSoil.Weather.Sample(
            series =>
            {
                TurfSoilColumns whole = LayeredTurfSoil.Default.Columns(series, 40);
                foreach (double depthCm in (double[])[2, 2.5, 5, 10, 20])
                {
                    SoilTemperatureColumns alone = SomeSoil.Of(LayeredTurfSoil.Default, series, 40, depthCm), together = whole.At(Depth.FromCentimetres(depthCm));
                    Assert.Equal(alone.MeanC, together.MeanC);
                    Assert.Equal(alone.DeviationC, together.DeviationC);
                }

                DateOnly middle = series.DayAt(series.Count / 2);
                TurfSoilColumns later = LayeredTurfSoil.Columns(LayeredTurfSoil.Default.StandAfter(series.Until(middle.AddDays(-1))!, 40), series.From(middle));
                Assert.Equal(whole.At(SomeSoil.FiveCm).MeanC[(series.Count / 2)..], later.At(SomeSoil.FiveCm).MeanC);
                Assert.Equal(whole.After.Layers, later.After.Layers);
            },
            iter: 50);

    [Fact]
    public void Measured_snow_radiation_and_humidity_change_nothing()
    {
        var builder = new DailySeriesBuilder();
        DailySeries series = SomeSoil.Days(NewYear, SomeSoil.SmoothYear(60), _ => 2);
        builder.AddMissingFrom(series);
        for (int i = 0; i < 60; i++)
        {
            builder.Put(series.DayAt(i), WeatherVariable.SnowDepthMm, 300);
            builder.Put(series.DayAt(i), WeatherVariable.SolarRadiationMJ, 3);
            builder.Put(series.DayAt(i), WeatherVariable.RelativeHumidityPercent, 95);
        }

        Assert.Equal(SomeSoil.Of(LayeredTurfSoil.Default, series).MeanC, SomeSoil.Of(LayeredTurfSoil.Default, builder.Build()!).MeanC);
    }
}
