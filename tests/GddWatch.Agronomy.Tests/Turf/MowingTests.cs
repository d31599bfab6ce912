using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Turf;
using Xunit;

namespace GddWatch.Agronomy.Tests.Turf;

public sealed class MowingTests
{
    private const double MmPerInch = 25.4;

    // Common practice: cool-season lawns weekly at 3 inches in the flush of spring, bermudagrass every 4 to 7 days at 1.5 inches in midsummer.
    [Theory]
    [InlineData(TurfType.CoolSeason, 3, 6, 8)]
    [InlineData(TurfType.WarmSeason, 1.5, 4, 7)]
    public void At_the_best_growth_the_usual_height_is_cut_at_the_usual_interval(TurfType turf, double inches, double fewest, double most)
    {
        double growth = MowingInterval.GrowthMmPerDay(1, MowingInterval.BestGrowthMmPerDay(turf));
        Assert.InRange(MowingInterval.Days(inches * MmPerInch, growth), fewest, most);
    }

    [Fact]
    public void Cutting_at_the_interval_just_keeps_the_one_third_rule_and_a_day_later_breaks_it()
    {
        double days = MowingInterval.Days(76.2, 5);
        Assert.True(MowingInterval.KeepsTheThird(76.2, days, 5));
        Assert.False(MowingInterval.KeepsTheThird(76.2, days + 1, 5));
        // One third of what stands before the cut, from the rule itself: mow at 1.5 times the height of cut (SEEN in extension texts).
        Assert.Equal(1.0 / 3, days * 5 / (76.2 + days * 5), 12);
    }

    [Fact]
    public void Grass_that_does_not_grow_is_never_due_and_growth_not_known_gives_no_interval()
    {
        Assert.True(double.IsPositiveInfinity(MowingInterval.Days(76.2, 0)));
        Assert.True(double.IsNaN(MowingInterval.Days(76.2, double.NaN)));
        Assert.Throws<ArgumentOutOfRangeException>(() => MowingInterval.Days(0, 5));
    }

    // Common practice: lawns of these grasses are cut within 1 to 4 inches; tall fescue higher than bermudagrass; heat raises the cut and never lowers it.
    [Fact]
    public void The_common_grasses_have_heights_that_lawns_are_cut_at()
    {
        Assert.Equal(10, MowingHeight.Grasses.Count);
        Assert.All(MowingHeight.Grasses, grass =>
        {
            MowingHeight range = MowingHeight.Of(grass)!.Value;
            Assert.InRange(range.LowestMm, MmPerInch - 1e-9, range.HighestMm);
            Assert.InRange(range.HighestMm, range.LowestMm, 4 * MmPerInch + 1e-9);
            Assert.True(range.AdvisedMm(35) >= range.AdvisedMm(20));
        });
        Assert.True(MowingHeight.Of("tall-fescue")!.Value.LowestMm > MowingHeight.Of("bermudagrass")!.Value.HighestMm);
        Assert.Null(MowingHeight.Of("clover"));
    }
}
