using CsCheck;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Turf;
using GddWatch.Agronomy.Weather;
using Xunit;

namespace GddWatch.Agronomy.Tests.Turf;

public sealed class TurfTests
{
    // Common practice: a higher cut and a shorter interval at the growth of spring, which is nearly the best there is.
    [Fact]
    public void Cutting_at_three_inches_every_five_days_keeps_the_one_third_rule_at_spring_growth_where_two_inches_every_ten_days_does_not()
    {
        double spring = MowingInterval.GrowthMmPerDay(0.95, MowingInterval.BestGrowthMmPerDay(TurfType.CoolSeason));
        Assert.True(MowingInterval.KeepsTheThird(3 * 25.4, 5, spring));
        Assert.False(MowingInterval.KeepsTheThird(2 * 25.4, 10, spring));
    }

    // Science reference 3.7 (CALC): height 3 inches, growth 0.1 and 0.2 inches a day.
    [Theory]
    [InlineData(0.1, 15)]
    [InlineData(0.2, 7.5)]
    public void The_interval_is_half_the_height_over_the_growth(double inchesPerDay, double days) => Assert.Equal(days, MowingInterval.Days(76.2, inchesPerDay * 25.4), 9);

    [Fact]
    public void The_advised_height_lies_in_the_upper_half_of_the_range_and_at_its_top_in_heat() =>
        Assert.All(MowingHeight.Grasses, grass =>
        {
            MowingHeight range = MowingHeight.Of(grass)!.Value;
            Assert.True(range.AdvisedMm(20) >= (range.LowestMm + range.HighestMm) / 2);
            Assert.Equal(range.HighestMm, range.AdvisedMm(32));
        });

    // Common practice: deep watering once or twice a week in midsummer on loam with deep roots, never daily. July at 40° north: highs of 30 and lows of 18 °C, no rain.
    [Theory]
    [InlineData(TurfType.CoolSeason)]
    [InlineData(TurfType.WarmSeason)]
    public void A_dry_July_on_loam_comes_to_one_or_two_deep_waterings_a_week_and_never_to_daily_ones(TurfType turf)
    {
        double total = RootZone.TotalMm(SoilTexture.Loam);
        var zone = new RootZone(0, 0);
        var waterings = new List<int>();
        for (int day = 182; day < 182 + 28; day++)
        {
            double reference = Hargreaves.Mm(18, 30, ExtraterrestrialRadiation.MJPerM2(40, day));
            zone = zone.Next(turf, total, reference, 0);
            if (Watering.Due(zone.DepletionMm, RootZone.AllowedMm(turf, total, reference), 0, SoilTexture.Loam) is not { } watering) continue;
            Assert.InRange(watering.NetMm, 12, 40);
            Assert.True(watering.Cycles > 1);
            waterings.Add(day);
            zone = new RootZone(0, 0);
        }

        Assert.InRange(waterings.Count, 4, 8);
        Assert.All(waterings.Zip(waterings.Skip(1)), pair => Assert.True(pair.Second - pair.First >= 3));
    }

    [Fact]
    public void Rain_on_its_way_that_covers_what_is_missing_makes_no_watering_due()
    {
        Assert.Null(Watering.Due(20, 18, 25, SoilTexture.Loam));
        Assert.Equal(12, Watering.Due(20, 18, 8, SoilTexture.Loam)!.NetMm, 9);
        Assert.Null(Watering.Due(double.NaN, 18, 0, SoilTexture.Loam));
    }

    [Fact]
    public void The_depletion_stays_within_what_the_soil_holds_and_more_rain_never_makes_more_missing() =>
        Gen.Select(Gen.Double[0, 12].Array[60], Gen.Double[0, 40].Array[60], Gen.Double[0, 10]).Sample(
            (drying, rain, more) =>
            {
                RootZone dry = RootZone.Unknown(51);
                RootZone wet = RootZone.Unknown(51);
                for (int i = 0; i < drying.Length; i++)
                {
                    dry = dry.Next(TurfType.CoolSeason, 51, drying[i], rain[i] - 25 < 0 ? 0 : rain[i] - 25);
                    wet = wet.Next(TurfType.CoolSeason, 51, drying[i], (rain[i] - 25 < 0 ? 0 : rain[i] - 25) + more);
                    Assert.InRange(dry.LeastMm, 0, dry.MostMm);
                    Assert.InRange(dry.MostMm, 0, 51);
                    Assert.True(wet.LeastMm <= dry.LeastMm + 1e-9 && wet.MostMm <= dry.MostMm + 1e-9);
                }
            },
            iter: 200,
            seed: "0000KXKkWK54");

    [Fact]
    public void A_missing_day_of_rain_makes_the_depletion_unknown_until_a_soaking_rain()
    {
        var zone = new RootZone(20, 20);
        Assert.False(double.IsNaN(zone.DepletionMm));
        zone = zone.Next(TurfType.CoolSeason, 51, 4, double.NaN);
        Assert.True(double.IsNaN(zone.DepletionMm));
        zone = zone.Next(TurfType.CoolSeason, 51, 4, 80);
        Assert.Equal(0, zone.DepletionMm, 9);
    }

    [Fact]
    public void Cutting_the_series_changes_no_evapotranspiration_and_no_depletion_before_the_cut()
    {
        DailySeries series = Rainy();
        double[] whole = ReferenceEvapotranspiration.Column(series, 41, 250);
        double[] cut = ReferenceEvapotranspiration.Column(series.Until(series.DayAt(200))!, 41, 250);
        Assert.Equal(whole[..201], cut);
        double[] depletion = RootZoneColumn.Mm(TurfType.CoolSeason, 51, whole, series.Column(WeatherVariable.PrecipitationMm), new HashSet<int>());
        double[] depletionCut = RootZoneColumn.Mm(TurfType.CoolSeason, 51, cut, series.Until(series.DayAt(200))!.Column(WeatherVariable.PrecipitationMm), new HashSet<int>());
        Assert.Equal(depletion[..201], depletionCut);
        Assert.All(whole, value => Assert.True(value >= 0));
        Assert.Contains(depletion, value => value > 0);
    }

    [Fact]
    public void Knowing_the_sun_the_humidity_or_the_wind_changes_the_answer_and_leaves_it_in_a_possible_range()
    {
        double sun = ExtraterrestrialRadiation.MJPerM2(41, 190);
        double temperaturesAlone = ReferenceEvapotranspiration.Mm(16, 29, sun, 250);
        Assert.Equal(Hargreaves.Mm(16, 29, sun), temperaturesAlone);
        double cloudy = ReferenceEvapotranspiration.Mm(16, 29, sun, 250, solarMJ: 10);
        double clear = ReferenceEvapotranspiration.Mm(16, 29, sun, 250, solarMJ: 28);
        Assert.True(cloudy < clear);
        Assert.True(ReferenceEvapotranspiration.Mm(16, 29, sun, 250, humidityPercent: 85) < ReferenceEvapotranspiration.Mm(16, 29, sun, 250, humidityPercent: 40));
        Assert.True(double.IsNaN(ReferenceEvapotranspiration.Mm(double.NaN, 29, sun, 250)));
        Assert.InRange(clear, 4, 8);
    }

    private static DailySeries Rainy()
    {
        var builder = new DailySeriesBuilder();
        for (var day = new DateOnly(2023, 1, 1); day.Year == 2023; day = day.AddDays(1))
        {
            double mean = Some.SmoothMeanC(day);
            builder.Put(day, WeatherVariable.MinimumAirC, mean - 6);
            builder.Put(day, WeatherVariable.MaximumAirC, mean + 6);
            builder.Put(day, WeatherVariable.PrecipitationMm, day.DayNumber % 6 == 0 ? 15 : 0);
        }

        return builder.Build()!;
    }
}
