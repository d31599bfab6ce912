using GddWatch.Agronomy.Weather.Checks;
using Xunit;

namespace GddWatch.Agronomy.Tests.Weather.Checks;

public sealed class BiweightTests
{
    // Worked example of the formula of Lanzante 1996 (CALC): six ordinary values and a wild one, whose ordinary mean is 13.5 and standard deviation 7.312.
    [Fact]
    public void A_wild_value_moves_neither_mean_nor_deviation()
    {
        (double mean, double deviation) = Biweight.Of([10.1, 11.2, 9.8, 10.5, 12.0, 10.9, 30.0]);

        Assert.Equal(10.750524, mean, 6);
        Assert.Equal(0.832445, deviation, 6);
    }

    // CALC: more than half of the values are equal, so that the median distance is 0: mean 16/5, sample standard deviation √7.2.
    [Fact]
    public void Where_most_values_are_equal_the_ordinary_ones_are_given()
    {
        (double mean, double deviation) = Biweight.Of([2, 2, 2, 2, 8]);

        Assert.Equal(3.2, mean, 12);
        Assert.Equal(Math.Sqrt(7.2), deviation, 12);
    }

    [Fact]
    public void One_value_is_refused() => Assert.Throws<ArgumentException>(() => Biweight.Of([1.0]));
}
