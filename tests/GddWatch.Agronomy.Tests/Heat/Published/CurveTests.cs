using GddWatch.Agronomy.Heat;
using Xunit;

namespace GddWatch.Agronomy.Tests.Heat.Published;

public class CurveTests
{
    /// <summary>Half of the fourth decimal, to which the table was rounded.</summary>
    private const double Rounding = 0.5001e-4;

    // Science reference 1.8 (CALC, quadrature of each response over each curve).
    [Theory]
    [InlineData("C03", 0, 10.1, 1, 10, 30, 0.0000, 0.0500, 0.0005, 0.0042, 0.0042, 0.0042, 0.0042, 0.0043)]
    [InlineData("C06", 5, 25, 8, 10, 30, 5.0000, 7.5000, 5.6250, 6.0900, 6.0900, 6.0900, 6.0900, 6.4423)]
    [InlineData("C07", 5, 15, 5, 10, 30, 0.0000, 2.5000, 1.2500, 1.5915, 1.5915, 1.5915, 1.5915, 1.5915)]
    [InlineData("C08", 0, 16, 2, 10, 30, 0.0000, 3.0000, 1.1250, 1.6265, 1.6265, 1.6265, 1.6265, 1.6887)]
    [InlineData("C12", 18, 34, 20, 10, 30, 16.0000, 14.0000, 16.0000, 16.0000, 15.1280, 14.2560, 8.4614, 16.5000)]
    [InlineData("C13", 26, 34, 25, 10, 30, 20.0000, 18.0000, 20.0000, 20.0000, 18.7268, 17.4535, 8.7268, 19.7500)]
    [InlineData("C15", 5, 35, 7, 10, 30, 10.0000, 10.0000, 10.4167, 10.8816, 10.0000, 9.1184, 4.6456, 11.1515)]
    [InlineData("C16", -2, 38, 0, 10, 30, 8.0000, 10.0000, 9.8000, 10.8826, 9.3317, 7.7807, 3.4283, 11.0613)]
    [InlineData("C18", 31, 41, 32, 10, 30, 26.0000, 20.0000, 26.0000, 26.0000, 20.0000, 14.0000, 0.0000, 26.2500)]
    [InlineData("C21", 5, 55, 6, 10, 30, 20.0000, 10.0000, 20.2500, 20.6780, 12.7202, 4.7625, 2.7202, 20.8336)]
    [InlineData("C26", -12, 4, -9, 0, 25, 0.0000, 2.0000, 0.5000, 0.8720, 0.8720, 0.8720, 0.8720, 0.9230)]
    [InlineData("C32", 12, 28, 14, 15, 21.7, 5.0000, 3.3500, 5.2812, 5.5623, 3.8082, 2.0540, 0.9148, 5.8383)]
    [InlineData("C37", 12, 24, -2, 10, 30, 8.0000, 8.0000, 8.0000, 8.0000, 8.0000, 8.0000, 8.0000, 6.3251)]
    [InlineData("C42", 4.7, 33.6, 8.2, 9.6, 27.4, 9.5500, 8.9000, 9.9654, 10.4217, 9.1748, 7.9278, 3.7176, 10.9310)]
    public void Each_day_of_the_table_has_its_heat_by_every_method(
        string day,
        double minimumC,
        double maximumC,
        double nextMinimumC,
        double baseC,
        double upperC,
        double simple,
        double limitedExtremes,
        double triangle,
        double sine,
        double sineHorizontal,
        double sineIntermediate,
        double sineVertical,
        double doubleSine)
    {
        Check(simple, SimpleAverage.DegreeDays(DegreeDayCutoff.None, minimumC, maximumC, baseC, upperC));
        Check(limitedExtremes, AverageWithLimitedExtremes.DegreeDays(DegreeDayCutoff.Horizontal, minimumC, maximumC, baseC, upperC));
        Check(triangle, SingleTriangle.DegreeDays(DegreeDayCutoff.None, minimumC, maximumC, baseC, upperC));
        Check(sine, SingleSine.DegreeDays(DegreeDayCutoff.None, minimumC, maximumC, baseC, upperC));
        Check(sineHorizontal, SingleSine.DegreeDays(DegreeDayCutoff.Horizontal, minimumC, maximumC, baseC, upperC));
        Check(sineIntermediate, SingleSine.DegreeDays(DegreeDayCutoff.Intermediate, minimumC, maximumC, baseC, upperC));
        Check(sineVertical, SingleSine.DegreeDays(DegreeDayCutoff.Vertical, minimumC, maximumC, baseC, upperC));
        Check(doubleSine, DoubleSine.DegreeDays(DegreeDayCutoff.None, minimumC, maximumC, nextMinimumC, baseC, upperC));

        void Check(double expected, double actual) =>
            Assert.True(Math.Abs(actual - expected) <= Rounding, $"{day}: {actual:R} instead of {expected:F4}.");
    }

    // Science reference 1.8 (CALC): a base at the middle of the day leaves W/π under a sine.
    [Fact]
    public void A_base_at_the_middle_of_the_day_leaves_a_pi_th_of_the_half_range() =>
        Assert.Equal(5 / Math.PI, SingleSine.DegreeDays(DegreeDayCutoff.None, 5, 15, 10, null), 1e-14);

    // Science reference 1.7 (CALC): the day's floor can fall below the vertical cutoff, case C33.
    [Fact]
    public void The_floor_of_the_day_can_give_less_than_the_vertical_cutoff()
    {
        Assert.Equal(1.3728, SingleSine.DegreeDays(DegreeDayCutoff.Intermediate, 19, 33, 15, 21.7), Rounding);
        Assert.Equal(1.4257, SingleSine.DegreeDays(DegreeDayCutoff.Vertical, 19, 33, 15, 21.7), Rounding);
    }
}
