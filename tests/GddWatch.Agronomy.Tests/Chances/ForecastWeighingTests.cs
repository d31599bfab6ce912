using GddWatch.Agronomy.Chances;
using Xunit;

namespace GddWatch.Agronomy.Tests.Chances;

public sealed class ForecastWeighingTests
{
    private static readonly double[][] Futures = [[4, 5, 7], [6, 9, 8], [8, 7, 12]];

    private static readonly double[][] NoErrors = [[0, 0, 0], [0, 0, 0], [0, 0, 0]];

    [Fact]
    public void A_forecast_that_is_certain_is_taken_as_it_is() =>
        Assert.All(ForecastWeighing.Weigh(Futures, [10, 11, 12], NoErrors, [0, 0, 0], 0.8), future => Assert.Equal([10, 11, 12], future));

    [Fact]
    public void A_forecast_that_knows_nothing_moves_nothing()
    {
        double[][] given = ForecastWeighing.Weigh(Futures, [30, 30, 30], NoErrors, [1e6, 1e6, 1e6], 0);
        for (int i = 0; i < Futures.Length; i++) Assert.All(given[i].Zip(Futures[i]), each => Assert.Equal(each.Second, each.First, 6));
    }

    // The scalar Kalman gain P/(P + R), textbook (MEMORY); CALC: the futures 4, 6, 8 have P = 4, with R = 1 the gain is 0.8; 10 said, errors 1, 0, −1: 4 + 0.8·5 = 8, 6 + 0.8·4 = 9.2, 8 + 0.8·3 = 10.4.
    [Fact]
    public void One_day_is_weighed_by_how_sure_both_are()
    {
        double[][] given = ForecastWeighing.Weigh([[4], [6], [8]], [10], [[1], [0], [-1]], [1], 0.8);
        Assert.All(given.Zip([8, 9.2, 10.4]), each => Assert.Equal(each.Second, each.First[0], 5));
    }

    [Fact]
    public void The_surer_the_forecast_the_nearer_to_it_the_futures_come()
    {
        double Apart(double deviationC) => ForecastWeighing.Weigh(Futures, [10, 11, 12], NoErrors, [deviationC, deviationC, deviationC], 0).Sum(future => future.Zip([10.0, 11, 12]).Sum(each => Math.Abs(each.First - each.Second)));
        double[] apart = [.. new[] { 0.1, 0.5, 1, 2, 4, 8 }.Select(Apart)];
        for (int i = 1; i < apart.Length; i++) Assert.True(apart[i - 1] < apart[i], $"{apart[i - 1]} {apart[i]}");
    }
}
