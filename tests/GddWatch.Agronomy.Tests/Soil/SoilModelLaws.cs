using CsCheck;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Soil;
using GddWatch.Agronomy.Weather;
using Xunit;

namespace GddWatch.Agronomy.Tests.Soil;

/// <summary>Laws over random weather with holes.</summary>
public sealed class SoilModelLaws
{
    public static TheoryData<string> Models => SoilModels.Names;

    [Theory]
    [MemberData(nameof(Models))]
    public void Cutting_a_series_changes_nothing_before_the_cut(string name) =>
        Gen.Select(SomeSoil.Weather, Gen.Double[0, 1]).Sample(
            (series, where) =>
            {
                DailySeries cut = series.Until(series.DayAt((int)(where * (series.Count - 1))))!;
                SoilTemperatureColumns whole = SomeSoil.Of(SoilModels.Called(name), series);
                SoilTemperatureColumns part = SomeSoil.Of(SoilModels.Called(name), cut);
                Assert.Equal(part.MeanC, whole.MeanC.Take(cut.Count));
                Assert.Equal(part.DeviationC, whole.DeviationC.Take(cut.Count));
            },
            iter: 100,
            seed: "0000KXKkWK54");

    [Fact]
    public void After_a_long_hole_a_published_model_begins_afresh_without_the_snow_that_lay_before()
    {
        double[] winter = [.. Enumerable.Repeat(-6.0, 60), .. Enumerable.Repeat(double.NaN, 12), .. Enumerable.Repeat(-3.0, 60)];
        DailySeries holed = SomeSoil.Days(new DateOnly(2023, 11, 1), winter, day => day <= 60 ? 8 : 0);
        DailySeries afresh = SomeSoil.Days(new DateOnly(2023, 11, 1).AddDays(72), winter.AsSpan(72), _ => 0);
        foreach (ISoilTemperatureModel model in SoilModels.All.Where(model => model is not LayeredTurfSoil))
        {
            Assert.Equal(SomeSoil.Of(model, afresh).MeanC, SomeSoil.Of(model, holed).MeanC.Skip(72));
        }
    }

    [Theory]
    [MemberData(nameof(Models))]
    public void Every_estimate_has_a_deviation_and_lies_where_soil_can_be(string name) =>
        SomeSoil.Weather.Sample(
            series =>
            {
                SoilTemperatureColumns columns = SomeSoil.Of(SoilModels.Called(name), series);
                for (int i = 0; i < series.Count; i++)
                {
                    Assert.Equal(double.IsNaN(columns.MeanC[i]), double.IsNaN(columns.DeviationC[i]));
                    if (double.IsNaN(columns.MeanC[i])) continue;
                    Assert.InRange(columns.MeanC[i], -30, 50);
                    Assert.InRange(columns.DeviationC[i], 0.3, 6);
                }
            },
            iter: 100,
            seed: "0000KXKkWK54");

    [Fact]
    public void Without_frost_and_snow_warmer_air_never_gives_colder_soil() =>
        // With them it may: milder air lays less snow, and bare soil then freezes deeper (2.9 °C colder at worst in random winters).
        Gen.Select(Gen.Double[-4, 4].Array[30, 500], Gen.Double[0, 20], Gen.Double[0.05, 4]).Sample(
            (push, rainMm, warmer) =>
            {
                double[] cool = SomeSoil.SmoothYear(push.Length);
                double departure = 0;
                for (int i = 0; i < cool.Length; i++)
                {
                    departure = 0.7 * departure + push[i];
                    cool[i] = Math.Max(4, cool[i] + departure);
                }

                double[] warm = [.. cool.Select(mean => mean + warmer)];
                double rain(int day) => day % 3 == 0 ? rainMm : 0;
                SoilTemperatureColumns cooler = SomeSoil.Of(LayeredTurfSoil.Default, SomeSoil.Days(new DateOnly(2023, 1, 1), cool, rain));
                SoilTemperatureColumns warmest = SomeSoil.Of(LayeredTurfSoil.Default, SomeSoil.Days(new DateOnly(2023, 1, 1), warm, rain));
                for (int i = LayeredTurfSoil.KnownDaysNeeded; i < cool.Length; i++) Assert.True(warmest.MeanC[i] >= cooler.MeanC[i]);
            },
            iter: 300,
            seed: "0000KXKkWK54");

    [Fact]
    public void The_southern_half_of_the_earth_sees_the_same_half_a_year_later()
    {
        // The same weather 181 days later at the mirrored latitude. Not exactly the same soil: the earth is nearest to the sun in January,
        // so that the southern summer has 7 % more sun above the air than the northern one and the winter 7 % less (dr of FAO-56, 0.967 to
        // 1.033). Sun warms the surface by some 10 °C in summer, which makes up to 0.7 °C; half a year is not half of 365 days either.
        // Without the latitude's sign the difference is 6 °C and more.
        double[] year = SomeSoil.SmoothYear(1095);
        DailySeries north = SomeSoil.Days(new DateOnly(2021, 1, 1), year, d => d % 5 == 0 ? 10 : 0);
        DailySeries south = SomeSoil.Days(new DateOnly(2021, 1, 1).AddDays(AnnualDay.HalfYearDays), year, d => d % 5 == 0 ? 10 : 0);
        foreach (double depth in (double[])[2, 5, 10, 20])
        {
            double[] northern = SomeSoil.Of(LayeredTurfSoil.Default, north, 40, depth).MeanC;
            double[] southern = SomeSoil.Of(LayeredTurfSoil.Default, south, -40, depth).MeanC;
            double[] unmirrored = SomeSoil.Of(LayeredTurfSoil.Default, south, 40, depth).MeanC;
            double apart = Apart(northern, southern);
            Assert.InRange(apart, 0, 1.0);
            Assert.True(Apart(northern, unmirrored) > 4 * apart);
        }
    }

    private static double Apart(double[] one, double[] other) => one.Zip(other, (a, b) => Math.Abs(a - b)).Where(double.IsFinite).Max();
}
