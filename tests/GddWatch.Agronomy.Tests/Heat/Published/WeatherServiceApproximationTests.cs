using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Tests.Heat.Laws;
using Xunit;

namespace GddWatch.Agronomy.Tests.Heat.Published;

/// <summary>
/// The four-branch approximation by which weather services reckon sums above a base: met.ie/climate/data03.asp (SEEN). Another's formula, so a bound on how
/// far ours may stray from it.
/// </summary>
public class WeatherServiceApproximationTests
{
    // Values: science reference 1.6 (CALC).
    [Theory]
    [InlineData(5, 20, 3.75)]
    [InlineData(0, 16, 1.5)]
    [InlineData(5, 15, 1.25)]
    [InlineData(12, 22, 7.0)]
    public void The_approximation_is_written_down_as_it_was_published(double minimumC, double maximumC, double heat) =>
        Assert.Equal(heat, FourBranches(minimumC, maximumC, 10), 1e-12);

    /// <summary>
    /// Derived from the two formulas: with x the base's place between the middle (0) and the maximum (1), in half ranges W, the triangle is farthest from the
    /// approximation at x = ±1/2, by W/16, and the sine at x = 0, by W·(1/π − 1/4).
    /// </summary>
    [Fact]
    public void Triangle_and_sine_stay_as_near_to_the_approximation_as_the_formulas_allow()
    {
        RandomDays.Each(20_000, day =>
        {
            double halfRangeC = (day.MaximumC - day.MinimumC) / 2;
            double approximation = FourBranches(day.MinimumC, day.MaximumC, day.BaseC);
            double triangle = SingleTriangle.DegreeDays(DegreeDayCutoff.None, day.MinimumC, day.MaximumC, day.BaseC, null);
            double sine = SingleSine.DegreeDays(DegreeDayCutoff.None, day.MinimumC, day.MaximumC, day.BaseC, null);
            Assert.True(Math.Abs(triangle - approximation) <= halfRangeC / 16 + 1e-12);
            Assert.True(Math.Abs(sine - approximation) <= halfRangeC * (1 / Math.PI - 0.25) + 1e-12);
        });
    }

    private static double FourBranches(double minimum, double maximum, double threshold)
    {
        double mean = (minimum + maximum) / 2;
        if (minimum >= threshold) return mean - threshold;
        if (maximum <= threshold) return 0;
        return mean >= threshold ? (maximum - threshold) / 2 - (threshold - minimum) / 4 : (maximum - threshold) / 4;
    }
}
