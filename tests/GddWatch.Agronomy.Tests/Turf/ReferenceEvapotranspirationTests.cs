using CsCheck;
using GddWatch.Agronomy.Turf;
using GddWatch.Agronomy.Weather;
using Xunit;

namespace GddWatch.Agronomy.Tests.Turf;

public sealed class ReferenceEvapotranspirationTests
{
    private const double Missing = double.NaN;

    private static readonly Gen<double> Maybe = Gen.OneOf(Gen.Const(Missing), Gen.Double[0, 1]);

    [Theory]
    [InlineData(20, 60, 2, EvapotranspirationWay.Full)]
    [InlineData(20, 60, Missing, EvapotranspirationWay.Reduced)]
    [InlineData(Missing, Missing, 2, EvapotranspirationWay.Reduced)]
    [InlineData(Missing, Missing, Missing, EvapotranspirationWay.TemperaturesAlone)]
    public void It_says_by_which_way_a_day_is_reckoned(double solar, double humidity, double wind, EvapotranspirationWay way) =>
        Assert.Equal(way, ReferenceEvapotranspiration.WayFor(solar, humidity, wind));

    [Fact]
    public void Whatever_is_known_of_a_day_with_temperatures_it_is_a_number_and_never_negative() =>
        Gen.Select(Gen.Double[-45, 45], Gen.Double[0, 25], Gen.Double[-90, 90], Gen.Int[1, 366], Maybe, Maybe, Maybe).Sample(
            (minimum, range, latitude, day, solarShare, humidityShare, windShare) =>
            {
                double sun = ExtraterrestrialRadiation.MJPerM2(latitude, day);
                double found = ReferenceEvapotranspiration.Mm(minimum, minimum + range, sun, 300, solarShare * 0.8 * sun, humidityShare * 100, windShare * 10);
                Assert.True(double.IsFinite(found) && found >= 0, $"{found}");
            },
            iter: 5000,
            seed: "0000KXKkWK54");

    [Fact]
    public void Where_sun_and_humidity_equal_the_reductions_for_them_knowing_them_changes_nothing()
    {
        double sun = ExtraterrestrialRadiation.MJPerM2(41, 190);
        double solar = SolarRadiation.FromTemperaturesMJ(16, 25, sun);
        double humidity = 100 * VapourPressure.SaturationKPa(16) / VapourPressure.MeanSaturationKPa(16, 25);
        Assert.Equal(
            ReferenceEvapotranspiration.PenmanMonteithMm(16, 25, sun, 250),
            ReferenceEvapotranspiration.PenmanMonteithMm(16, 25, sun, 250, solar, humidity, WindSpeed.UsualMPerS),
            9);
    }

    // FAO-56 equation 50: 0.19 on a coast, 0.16 inland (MEMORY).
    [Fact]
    public void A_range_of_temperature_stands_for_more_sun_on_a_coast_but_never_for_more_than_a_clear_sky()
    {
        double sun = ExtraterrestrialRadiation.MJPerM2(41, 190);
        double inland = ReferenceEvapotranspiration.PenmanMonteithMm(18, 26, sun, 10);
        Assert.True(ReferenceEvapotranspiration.PenmanMonteithMm(18, 26, sun, 10, isCoastal: true) > inland);
        double clearSky = SolarRadiation.ClearSkyMJ(10, sun);
        Assert.Equal(
            ReferenceEvapotranspiration.PenmanMonteithMm(5, 35, sun, 10, clearSky),
            ReferenceEvapotranspiration.PenmanMonteithMm(5, 35, sun, 10),
            12);
    }

    // Below Rs/Rso = 0.26 the line for clouds would turn the loss of warmth into a gain (FAO-56 equation 39, MEMORY).
    [Fact]
    public void Under_the_darkest_sky_the_grass_still_loses_warmth()
    {
        Assert.True(NetRadiation.LongwaveMJ(2, 8, 0.7, 0.5, 10) > 0);
        Assert.Equal(NetRadiation.LongwaveMJ(2, 8, 0.7, 3, 10), NetRadiation.LongwaveMJ(2, 8, 0.7, 0.5, 10));
    }

    [Fact]
    public void No_sunshine_is_reckoned_in_the_polar_night()
    {
        Assert.Equal(0, SolarRadiation.FromSunshineMJ(0, DayLength.Hours(80, 355), ExtraterrestrialRadiation.MJPerM2(80, 355)));
        Assert.InRange(ReferenceEvapotranspiration.Mm(-30, -20, 0, 10, 0, 70, 5), 0, 1);
    }

    [Fact]
    public void A_column_takes_from_each_day_what_is_known_of_it_and_leaves_a_day_without_temperatures_open()
    {
        var first = new DateOnly(2024, 6, 1);
        DailySeries series = Series(first, (Minimum: 14, Solar: 24, Humidity: 60, Wind: 3), (15, Missing, Missing, Missing), (Missing, 22, 55, 2), (13, 20, Missing, 1));
        double[] column = ReferenceEvapotranspiration.Column(series, 45, 120);
        double Sun(int index) => ExtraterrestrialRadiation.MJPerM2(45, first.AddDays(index).DayOfYear);
        Assert.Equal(ReferenceEvapotranspiration.PenmanMonteithMm(14, 27, Sun(0), 120, 24, 60, 3), column[0]);
        Assert.Equal(Hargreaves.Mm(15, 27, Sun(1)), column[1]);
        Assert.True(double.IsNaN(column[2]));
        Assert.Equal(ReferenceEvapotranspiration.PenmanMonteithMm(13, 27, Sun(3), 120, 20, Missing, 1), column[3]);
    }

    [Fact]
    public void A_column_allocates_nothing_for_its_days_but_itself()
    {
        DailySeries series = Some.SmoothYears(2000, 20);
        ReferenceEvapotranspiration.Column(series, 41, 250);
        long before = GC.GetAllocatedBytesForCurrentThread();
        ReferenceEvapotranspiration.Column(series, 41, 250);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, series.Count * sizeof(double) + 1024);
    }

    private static DailySeries Series(DateOnly first, params (double Minimum, double Solar, double Humidity, double Wind)[] days)
    {
        var builder = new DailySeriesBuilder();
        for (int i = 0; i < days.Length; i++)
        {
            DateOnly day = first.AddDays(i);
            builder.Put(day, WeatherVariable.MaximumAirC, 27);
            builder.Put(day, WeatherVariable.MinimumAirC, days[i].Minimum);
            builder.Put(day, WeatherVariable.SolarRadiationMJ, days[i].Solar);
            builder.Put(day, WeatherVariable.RelativeHumidityPercent, days[i].Humidity);
            builder.Put(day, WeatherVariable.WindMPerS, days[i].Wind);
        }

        return builder.Build()!;
    }
}
