using CsCheck;
using GddWatch.Agronomy.Soil;
using MathNet.Numerics.Statistics;
using Xunit;

namespace GddWatch.Agronomy.Tests.Soil;

public sealed class RunningMeanTests
{
    [Fact]
    public void It_is_the_mean_of_the_last_days_with_the_day_itself_and_unknown_before_there_are_enough() // by hand
    {
        Assert.Equal([double.NaN, double.NaN, 2, 3, 6], RunningMean.Over([1, 2, 3, 4, 11], 3));
        Assert.Equal([1, 2, 3], RunningMean.Over([1, 2, 3], 1));
        Assert.Equal([double.NaN, double.NaN], RunningMean.Over([1, 2], 5));
        Assert.Empty(RunningMean.Over([], 5));
    }

    [Fact]
    public void A_missing_day_is_missing_in_every_mean_that_holds_it_and_in_no_other() =>
        Assert.Equal([double.NaN, 1.5, double.NaN, double.NaN, 4.5], RunningMean.Over([1, 2, double.NaN, 4, 5], 2));

    [Fact]
    public void It_agrees_with_the_numbers_library() =>
        // The library's moving average begins with fewer values; from the window's length on both are the same mean.
        Gen.Select(Gen.Double[-30, 40].Array[1, 60], Gen.Int[1, 20]).Sample((values, days) =>
        {
            double[] own = RunningMean.Over(values, days);
            double[] library = [.. values.MovingAverage(days)];
            for (int i = 0; i < values.Length; i++)
            {
                if (i + 1 < days) Assert.True(double.IsNaN(own[i]));
                else Assert.Equal(library[i], own[i], 1e-9);
            }
        });

    [Theory]
    [InlineData(0)]
    [InlineData(-3)]
    public void Fewer_than_one_day_is_refused_with_the_value(int days) =>
        Assert.Contains(
            $"days of the running mean [days] was {days}; allowed is 1 or more.",
            Assert.Throws<ArgumentOutOfRangeException>(() => RunningMean.Over([1], days)).Message,
            StringComparison.Ordinal);
}
