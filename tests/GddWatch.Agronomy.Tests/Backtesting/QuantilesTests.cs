using GddWatch.Agronomy.Backtesting;
using Xunit;

namespace GddWatch.Agronomy.Tests.Backtesting;

public sealed class QuantilesTests
{
    private static readonly double[] TenDates = [95, 98, 101, 103, 104, 107, 109, 112, 115, 120];

    /// <summary>Worked from the definitions of Hyndman and Fan 1996 (science reference 5.2, CALC).</summary>
    [Theory]
    [InlineData(0.10, 97.7, 96.1)]
    [InlineData(0.25, 101.5, 100.75)]
    [InlineData(0.50, 105.5, 105.5)]
    [InlineData(0.75, 111.25, 112.25)]
    [InlineData(0.90, 115.5, 118.16666666666667)]
    [InlineData(0, 95, 95)]
    [InlineData(1, 120, 120)]
    public void Type_seven_and_type_eight_are_read_as_their_authors_define_them(double share, double seven, double eight)
    {
        Assert.Equal(seven, Quantiles.Of(TenDates, share, QuantileType.Seven), 1e-9);
        Assert.Equal(eight, Quantiles.Of(TenDates, share), 1e-9);
    }

    [Fact]
    public void The_order_of_the_values_does_not_matter() =>
        Assert.Equal(Quantiles.Of(TenDates, 0.3), Quantiles.Of([.. TenDates.Reverse()], 0.3));

    [Fact]
    public void Nothing_a_missing_value_and_an_impossible_share_are_refused()
    {
        Assert.Throws<ArgumentException>(() => Quantiles.Median([]));
        Assert.Throws<ArgumentException>(() => Quantiles.Median([1, double.NaN]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Quantiles.Of(TenDates, 1.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Quantiles.Of(TenDates, double.NaN));
    }
}
