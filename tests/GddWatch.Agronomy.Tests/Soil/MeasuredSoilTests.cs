using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Soil;
using GddWatch.Agronomy.Weather;
using Xunit;

namespace GddWatch.Agronomy.Tests.Soil;

public sealed class MeasuredSoilTests
{
    private static readonly DateOnly FirstDay = new(2023, 4, 1);

    [Theory]
    [InlineData(2, 1, 3)]
    [InlineData(5, 1, 0)]
    [InlineData(7.5, 1, 2.5)]
    [InlineData(8, 2, 2)]
    [InlineData(10, 2, 0)]
    [InlineData(20, 2, 10)]
    public void The_nearer_sensor_stands_for_the_depth_and_the_deviation_grows_with_the_distance_from_it(double depthCm, double meanC, double awayCm)
    {
        // Known answer: √(0.07 °C²/cm · distance) on a day that was measured.
        SoilTemperatureColumns columns = At(Series([1, 1], [2, 2]), depthCm);
        Assert.Equal([meanC, meanC], columns.MeanC);
        Assert.Equal(Math.Sqrt(0.07 * awayCm), columns.DeviationC[1], 1e-12);
    }

    [Theory]
    [InlineData(5)]
    [InlineData(10)]
    public void Where_there_is_only_one_sensor_it_stands_for_every_depth(double depthCm)
    {
        Assert.Equal([1.0], At(Series([1], null), depthCm).MeanC);
        Assert.Equal([2.0], At(Series(null, [2]), depthCm).MeanC);
    }

    [Fact]
    public void A_hole_of_three_days_is_bridged_with_a_degree_a_day_and_a_longer_one_stays_unknown()
    {
        const double none = double.NaN;
        SoilTemperatureColumns columns = At(Series([none, 4, none, none, none, none, 7], null), 5);
        Assert.Equal([none, 4, 4, 4, 4, none, 7], columns.MeanC);
        Assert.Equal([none, 0, 1, 2, 3, none, 0], columns.DeviationC);
        Assert.Equal(Math.Sqrt(2 * 2 + 0.07 * 3), At(Series([4, none, none], null), 2).DeviationC[2], 1e-12);
    }

    [Fact]
    public void Without_a_sensor_nothing_is_known()
    {
        SoilTemperatureColumns columns = At(SomeSoil.Days(FirstDay, [8, 9]), 5);
        Assert.All(columns.MeanC, value => Assert.True(double.IsNaN(value)));
        Assert.All(columns.DeviationC, value => Assert.True(double.IsNaN(value)));
    }

    [Theory]
    [InlineData(1.9, "depth [cm] was 1.9; allowed is 2 to 20.")]
    [InlineData(25, "depth [cm] was 25; allowed is 2 to 20.")]
    public void A_depth_outside_2_to_20_cm_is_refused_with_its_value(double depthCm, string says) =>
        Assert.Contains(says, Assert.Throws<ArgumentOutOfRangeException>(() => At(Series([1], null), depthCm)).Message, StringComparison.Ordinal);

    [Fact]
    public void An_infinite_measurement_is_refused_with_its_day() =>
        Assert.Contains(
            "measured soil temperature of 2023-04-02 [°C] was Infinity",
            Assert.Throws<ArgumentOutOfRangeException>(() => At(Series([1, double.PositiveInfinity], null), 5)).Message,
            StringComparison.Ordinal);

    [Fact]
    public void Where_only_the_other_depth_was_measured_the_deviation_is_about_as_large_as_the_two_lie_apart_at_fifty_stations()
    {
        // Open data: US Climate Reference Network 2010 to 2023, soil at 5 and 10 cm (public domain).
        double squares = 0;
        long days = 0;
        foreach (MeasuredStation station in MeasuredStation.All)
        {
            ReadOnlySpan<double> upper = station.Series.Column(WeatherVariable.Soil5CmC);
            ReadOnlySpan<double> lower = station.Series.Column(WeatherVariable.Soil10CmC);
            for (int i = 0; i < Math.Min(upper.Length, lower.Length); i++)
            {
                double apart = upper[i] - lower[i];
                if (double.IsNaN(apart)) continue;
                squares += apart * apart;
                days++;
            }
        }

        Assert.InRange(days, 230_000, 240_000);
        Assert.Equal(Math.Sqrt(squares / days), At(Series([1], null), 10).DeviationC[0], 0.1);
    }

    private static SoilTemperatureColumns At(DailySeries series, double depthCm) => MeasuredSoil.At(series, Depth.FromCentimetres(depthCm));

    private static DailySeries Series(double[]? at5Cm, double[]? at10Cm)
    {
        var builder = new DailySeriesBuilder();
        for (int i = 0; i < (at5Cm ?? at10Cm)!.Length; i++)
        {
            builder.Put(FirstDay.AddDays(i), WeatherVariable.MinimumAirC, 5);
            builder.Put(FirstDay.AddDays(i), WeatherVariable.MaximumAirC, 15);
            if (at5Cm is not null) builder.Put(FirstDay.AddDays(i), WeatherVariable.Soil5CmC, at5Cm[i]);
            if (at10Cm is not null) builder.Put(FirstDay.AddDays(i), WeatherVariable.Soil10CmC, at10Cm[i]);
        }

        return builder.Build()!;
    }
}
