using GddWatch.Agronomy.Quantities;
using Xunit;

namespace GddWatch.Agronomy.Tests.Turf;

public sealed class WaterDepthTests
{
    // 25.4 mm to the inch, by definition of the inch.
    [Fact]
    public void An_inch_of_water_is_25_4_millimetres_both_ways()
    {
        Assert.Equal(25.4, WaterDepth.FromInches(1).Millimetres);
        Assert.Equal(2, WaterDepth.FromMillimetres(50.8).Inches, 12);
        Assert.Equal(0, default(WaterDepth).Millimetres);
    }

    [Theory]
    [InlineData(-0.1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_depth_that_cannot_be_is_refused(double millimetres)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => WaterDepth.FromMillimetres(millimetres));
        Assert.Throws<ArgumentOutOfRangeException>(() => WaterDepth.FromInches(millimetres));
    }
}
