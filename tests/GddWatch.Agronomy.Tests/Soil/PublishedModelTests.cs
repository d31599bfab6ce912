using GddWatch.Agronomy.Soil;
using Xunit;

namespace GddWatch.Agronomy.Tests.Soil;

/// <summary>The published models against values reckoned from their formulas in the science reference, section 2 (CALC), on its twelve
/// days of mean air temperature.</summary>
public sealed class PublishedModelTests
{
    private const double FourDigits = 0.5001e-4;

    private static readonly double[] TwelveDays = [8, 10, 9, 12, 15, 14, 11, 13, 16, 18, 17, 12];

    [Theory]
    [InlineData(3, 15.6667)]
    [InlineData(5, 15.2000)]
    [InlineData(7, 14.4286)]
    [InlineData(10, 13.7000)]
    public void The_running_mean_gives_the_reckoned_means(int days, double expected) => // section 2.7
        Assert.Equal(expected, LastOf(new RunningMeanOfAir(days)), FourDigits);

    [Fact]
    public void Smoothed_air_gives_the_reckoned_last_day_above_its_offset() => // section 2.7, k = 0.2 from 8: 14.1970 on day 11, 13.7576 on day 12
        Assert.Equal(13.7576 + 1.7, LastOf(new SmoothedAir()), FourDigits);

    [Fact]
    public void Zheng_Hunt_and_Running_give_the_reckoned_step() // section 2.2: a = 0, b = 1, no snow; E = 13.3636
    {
        Assert.Equal(13.3636, LastOf(new RunningMeanOfAir(11)), FourDigits);
        Assert.Equal(12.1136, LastOf(new ZhengHuntRunning1993(0, 1)), FourDigits);
    }

    [Fact]
    public void Zheng_Hunt_and_Running_follow_a_change_less_under_snow()
    {
        // m = 0.25 bare, 0.10 under snow (SEEN); here the same twelve days 20 °C colder, so that they snow.
        double[] cold = [.. TwelveDays.Select(mean => mean - 20)];
        var model = new ZhengHuntRunning1993(0, 1);
        double snow = SomeSoil.Of(model, SomeSoil.Days(new DateOnly(2023, 1, 1), cold, _ => 5)).MeanC[^1];
        Assert.Equal(13.3636 - 20 + 0.10 * (12 - 17), snow, FourDigits);
    }

    [Fact]
    public void Plauborg_gives_the_reckoned_day() // section 2.3, an invented set
    {
        var set = new Plauborg2002.Coefficients(1.5, 0.35, 0.20, 0.25, -1, -2, 0.2, 0.1);
        Assert.Equal(13.3566, Plauborg2002.SoilC(set, 100, 18, 17, 12), FourDigits);
        Assert.Equal(Plauborg2002.SoilC(set, 365, 18, 17, 12), Plauborg2002.SoilC(set, 366, 18, 17, 12));
    }

    [Fact]
    public void Plauborg_turns_its_year_round_on_the_southern_half_of_the_earth()
    {
        double[] alike = [.. Enumerable.Repeat(12.0, 400)];
        double[] north = SomeSoil.Of(new Plauborg2002(), SomeSoil.Days(new DateOnly(2023, 1, 1), alike)).MeanC;
        double[] south = SomeSoil.Of(new Plauborg2002(), SomeSoil.Days(new DateOnly(2023, 1, 1), alike), -40).MeanC;
        Assert.Equal(north[10 + 182], south[10], 0.1);
        Assert.True(Math.Abs(north[10] - south[10]) > 2);
    }

    [Theory]
    [InlineData(0, 5, 15, 8, 9.9267)]
    [InlineData(2.5, 5, 15, 8, 9.1164)]
    [InlineData(2.5, 10, 15, 8, 9.0255)]
    [InlineData(3.75, 5, 15, 8, 8.8792)]
    [InlineData(2.5, 5, -10, 2, 1.3940)]
    public void Katterer_and_Andren_give_the_reckoned_step(double greenArea, double depthCm, double airC, double soilC, double expected) // section 2.4
    {
        double surface = KattererAndren2009.SurfaceC(airC, greenArea * KattererAndren2009.LeavesPerGreenArea);
        Assert.Equal(expected, soilC + (surface - soilC) * KattererAndren2009.Rate(depthCm, greenArea), FourDigits);
    }

    [Fact]
    public void Katterer_and_Andren_go_through_the_twelve_days_as_reckoned() // section 2.4: from 8, through all twelve: 13.4129
    {
        double soil = 8;
        foreach (double air in TwelveDays) soil += (KattererAndren2009.SurfaceC(air, 2) - soil) * KattererAndren2009.Rate(5, 2.5);
        Assert.Equal(13.4129, soil, FourDigits);
    }

    [Fact]
    public void Neitsch_and_others_give_the_reckoned_day() // section 2.5
    {
        Assert.Equal(3109.769, NeitschEtAl2011.DeepestDampingMm(1.4), 0.5001e-3);
        double damping = NeitschEtAl2011.DampingMm(1.4, 150, 1000);
        Assert.Equal(3108.582, damping, 0.5001e-3);
        double bare = NeitschEtAl2011.BareSurfaceC(8, 20, 18);
        Assert.Equal(13.958, bare, 0.5001e-3);
        double cover = NeitschEtAl2011.Cover(2000, 0);
        Assert.Equal(0.573783, cover, 0.5001e-6);
        double surface = cover * 9.5 + (1 - cover) * bare;
        Assert.Equal(11.40008, surface, 1e-5);
        double weight = NeitschEtAl2011.WeightOfYear(50, damping);
        Assert.Equal(0.038071, weight, 1e-6);
        Assert.Equal(10.11697, NeitschEtAl2011.StepC(9.8, surface, 11, weight), 1e-5);
        Assert.Equal(0.32073, NeitschEtAl2011.Cover(0, 10), 0.5001e-5);
        Assert.Equal(0.99999742, NeitschEtAl2011.Cover(0, 50), 0.5001e-8);
    }

    [Fact]
    public void Potter_and_Williams_give_the_reckoned_parts() // section 2.5
    {
        Assert.Equal(0.53588, PotterWilliams1994.Cover(2, 0), 0.5001e-5);
        Assert.Equal(0.89994, PotterWilliams1994.Cover(0, 10), 0.5001e-5);
        Assert.Equal(17.8, PotterWilliams1994.SurfaceOfDayC(8, 20, 0.3, wet: false), 1e-12);
        Assert.Equal(9.8, PotterWilliams1994.SurfaceOfDayC(8, 20, 0.3, wet: true), 1e-12);
    }

    [Fact]
    public void Lindstrom_and_others_are_smoothed_air_without_pull_from_the_deep() // section 2.6: reduces to exponential smoothing; 2.7: 13.7576
    {
        double soil = 8;
        foreach (double air in TwelveDays) soil = LindstromEtAl2002.StepC(soil, air, 99, 0.2, 0);
        Assert.Equal(13.7576, soil, FourDigits);
        Assert.Equal(0.7 * 10 + 0.2 * 15 + 0.1 * 8, LindstromEtAl2002.StepC(10, 15, 8, 0.2, 0.1), 1e-12);
    }

    [Fact]
    public void The_damped_wave_gives_the_reckoned_depths_and_temperatures() // section 2.1, D = 0.5e-6 m²/s
    {
        double year = DampedSinusoid.DampingDepthCm(0.5e-6, 365);
        Assert.Equal(11.73, DampedSinusoid.DampingDepthCm(0.5e-6, 1), 0.5001e-2);
        Assert.Equal(224.0, year, 0.05001);
        Assert.Equal(7.4851, DampedSinusoid.At(10, 12, 5, year, 100 - 20, 365), FourDigits);
        Assert.Equal(7.2911, DampedSinusoid.At(10, 12, 10, year, 100 - 20, 365), FourDigits);
        Assert.Equal(10.0000, DampedSinusoid.At(10, 12, 0, year, 111.25 - 20, 365), FourDigits);
        Assert.Equal(3.0730, DampedSinusoid.At(10, 12, 100, year, 0, 365), FourDigits);
        Assert.Contains("depth [cm] was -1", Assert.Throws<ArgumentOutOfRangeException>(() => DampedSinusoid.At(10, 12, -1, year, 0, 365)).Message);
    }

    [Fact]
    public void Short_holes_are_bridged_with_more_deviation_and_long_ones_begin_afresh()
    {
        double[] year = SomeSoil.SmoothYear(200);
        for (int i = 60; i < 63; i++) year[i] = double.NaN;
        for (int i = 120; i < 126; i++) year[i] = double.NaN;
        foreach (ISoilTemperatureModel model in SoilModels.All.Where(model => model is not LayeredTurfSoil))
        {
            SoilTemperatureColumns columns = SomeSoil.Of(model, SomeSoil.Days(new DateOnly(2023, 1, 1), year));
            Assert.True(columns.DeviationC[62] > columns.DeviationC[61] && columns.DeviationC[61] > columns.DeviationC[60]);
            Assert.Equal(columns.DeviationC[59], columns.DeviationC[63]);
            Assert.True(double.IsNaN(columns.MeanC[125]) && double.IsNaN(columns.MeanC[126]));
            Assert.True(double.IsFinite(columns.MeanC[126 + 31]));
        }
    }

    private static double LastOf(ISoilTemperatureModel model) => SomeSoil.Of(model, SomeSoil.Days(new DateOnly(2023, 7, 1), TwelveDays)).MeanC[^1];
}
