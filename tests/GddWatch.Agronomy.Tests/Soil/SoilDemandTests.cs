using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Soil;
using GddWatch.Agronomy.Weather;
using Xunit;

namespace GddWatch.Agronomy.Tests.Soil;

/// <summary>What no soil model accepts, and that each refusal names the value.</summary>
public sealed class SoilDemandTests
{
    public static TheoryData<string> Models => SoilModels.Names;

    [Theory]
    [MemberData(nameof(Models))]
    public void Impossible_weather_is_refused_with_its_day_and_value(string name)
    {
        ISoilTemperatureModel model = SoilModels.Called(name);
        Refuses(model, WeatherVariable.MinimumAirC, 25.5, "minimum temperature of 2023-01-08 [°C] was 25.5; allowed is at most the day's maximum of 16");
        Refuses(model, WeatherVariable.MinimumAirC, double.NegativeInfinity, "minimum temperature of 2023-01-08 [°C] was -Infinity");
        Refuses(model, WeatherVariable.MaximumAirC, double.PositiveInfinity, "maximum temperature of 2023-01-08 [°C] was Infinity");
        Refuses(model, WeatherVariable.PrecipitationMm, -0.2, "precipitation of 2023-01-08 [mm] was -0.2; allowed is 0 or more");
        Refuses(model, WeatherVariable.PrecipitationMm, double.PositiveInfinity, "precipitation of 2023-01-08 [mm] was Infinity");
    }

    [Theory]
    [MemberData(nameof(Models))]
    public void A_depth_outside_2_to_20_cm_or_a_latitude_beyond_the_poles_is_refused_with_its_value(string name)
    {
        ISoilTemperatureModel model = SoilModels.Called(name);
        DailySeries series = SomeSoil.Days(new DateOnly(2023, 1, 1), SomeSoil.SmoothYear(10));
        Says("depth [cm] was 1.9; allowed is 2 to 20.", () => SomeSoil.Of(model, series, 40, 1.9));
        Says("depth [cm] was 20.5; allowed is 2 to 20.", () => SomeSoil.Of(model, series, 40, 20.5));
        Says("depth [cm] was -5; allowed is 0 or more.", () => SomeSoil.Of(model, series, 40, -5));
        Says("latitude [°] was 90.5; allowed is -90 to 90.", () => SomeSoil.Of(model, series, 90.5));
        Says("latitude [°] was -91; allowed is -90 to 90.", () => SomeSoil.Of(model, series, -91));
        Says("latitude [°] was NaN; allowed is -90 to 90.", () => SomeSoil.Of(model, series, double.NaN));
    }

    [Theory]
    [MemberData(nameof(Models))]
    public void Columns_of_another_length_than_the_series_are_refused(string name)
    {
        ISoilTemperatureModel model = SoilModels.Called(name);
        DailySeries series = SomeSoil.Days(new DateOnly(2023, 1, 1), SomeSoil.SmoothYear(10));
        ArgumentException refusal = Assert.Throws<ArgumentException>(() => model.Estimate(series, 40, SomeSoil.FiveCm, new double[10], new double[9]));
        Assert.Contains("deviationC has room for 9 days; the series has 10.", refusal.Message);
    }

    [Theory]
    [MemberData(nameof(Models))]
    public void The_poles_and_the_equator_are_places_like_others(string name)
    {
        ISoilTemperatureModel model = SoilModels.Called(name);
        foreach (double latitude in (double[])[-90, 0, 90])
        {
            SoilTemperatureColumns columns = SomeSoil.Of(model, SomeSoil.Days(new DateOnly(2023, 1, 1), SomeSoil.SmoothYear(365), _ => 1), latitude);
            Assert.All(columns.MeanC.Skip(30), value => Assert.InRange(value, -40, 60));
        }
    }

    private static void Refuses(ISoilTemperatureModel model, WeatherVariable variable, double value, string says)
    {
        var day = new DateOnly(2023, 1, 8);
        var builder = new DailySeriesBuilder();
        builder.Put(day, variable, value);
        builder.AddMissingFrom(SomeSoil.Days(new DateOnly(2023, 1, 1), [10, 10, 10, 10, 10, 10, 10, 10, 10, 10], _ => 1));
        Says(says, () => SomeSoil.Of(model, builder.Build()!));
    }

    private static void Says(string text, Action act) => Assert.Contains(text, Assert.Throws<ArgumentOutOfRangeException>(act).Message);
}
