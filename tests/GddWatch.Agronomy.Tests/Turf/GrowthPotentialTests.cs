using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Turf;
using Xunit;

namespace GddWatch.Agronomy.Tests.Turf;

public sealed class GrowthPotentialTests
{
    // Science reference 3.6, whole table (CALC from Gelernter and Stowell 2005; optima SEEN, spreads MEMORY; warm-season curve capped above its optimum, SEEN).
    [Theory]
    [InlineData(40, 0.0198, 0.0003)]
    [InlineData(50, 0.1979, 0.0066)]
    [InlineData(55, 0.4296, 0.0228)]
    [InlineData(60, 0.7261, 0.0657)]
    [InlineData(68, 1.0000, 0.2494)]
    [InlineData(75, 0.7827, 0.5561)]
    [InlineData(80, 0.4868, 0.8007)]
    [InlineData(88, 0.1353, 1.0000)]
    [InlineData(95, 0.0261, 1.0000)]
    public void The_curves_agree_with_the_table(double fahrenheit, double cool, double warm)
    {
        double celsius = (fahrenheit - 32) / 1.8;
        Assert.Equal(cool, GrowthPotential.Of(TurfType.CoolSeason, celsius), 0.00005);
        Assert.Equal(warm, GrowthPotential.Of(TurfType.WarmSeason, celsius), 0.00005);
    }

    // Science reference 3.6 (CALC): they cross at 77.09 °F.
    [Fact]
    public void Above_25_degrees_warm_season_turf_grows_better_than_cool_season_turf()
    {
        double crossing = (77.09 - 32) / 1.8;
        Assert.True(GrowthPotential.Of(TurfType.CoolSeason, crossing - 0.01) > GrowthPotential.Of(TurfType.WarmSeason, crossing - 0.01));
        Assert.True(GrowthPotential.Of(TurfType.CoolSeason, crossing + 0.01) < GrowthPotential.Of(TurfType.WarmSeason, crossing + 0.01));
    }

    [Fact]
    public void What_is_missing_stays_missing_and_no_temperature_gives_less_than_none_or_more_than_all()
    {
        Assert.True(double.IsNaN(GrowthPotential.Of(TurfType.CoolSeason, double.NaN)));
        for (double celsius = -60; celsius <= 60; celsius++)
        {
            Assert.InRange(GrowthPotential.Of(TurfType.CoolSeason, celsius), 0, 1);
            Assert.InRange(GrowthPotential.Of(TurfType.WarmSeason, celsius), 0, 1);
        }
    }
}
