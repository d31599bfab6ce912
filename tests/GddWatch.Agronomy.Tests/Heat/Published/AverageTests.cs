using GddWatch.Agronomy.Heat;
using Xunit;

namespace GddWatch.Agronomy.Tests.Heat.Published;

public class AverageTests
{
    // Science reference 1.2, table "where they differ" (CALC), after McMaster & Wilhelm 1997, Agric. For. Meteorol. 87:291-300 (SEEN).
    [Theory]
    [InlineData(-5, 15, 0, null, 5.0, 7.5)]
    [InlineData(-8, 6, 0, null, 0.0, 3.0)]
    [InlineData(4, 20, 10, null, 2.0, 5.0)]
    [InlineData(0, 16, 10, null, 0.0, 3.0)]
    [InlineData(5, 15, 10, null, 0.0, 2.5)]
    [InlineData(8, 36, 10, 30.0, 12.0, 10.0)]
    [InlineData(18, 34, 10, 30.0, 16.0, 14.0)]
    public void The_two_published_interpretations_differ_as_in_the_table(
        double minimumC, double maximumC, double baseC, double? upperC, double first, double second)
    {
        Assert.Equal(first, SimpleAverage.DegreeDays(DegreeDayCutoff.Horizontal, minimumC, maximumC, baseC, upperC), 1e-12);
        Assert.Equal(second, AverageWithLimitedExtremes.DegreeDays(DegreeDayCutoff.Horizontal, minimumC, maximumC, baseC, upperC), 1e-12);
    }

    // Extension articles: kentcoopextension.blogspot.com/2008/03/turf-crabgrass-germination-and.html; Iowa State Agron 541, lesson 2b (SEEN). In °F.
    [Theory]
    [InlineData(27, 75, 50, 1)]
    [InlineData(50, 70, 50, 10)]
    public void Worked_examples_of_the_simple_average_in_fahrenheit(double minimumF, double maximumF, double baseF, double heatF) =>
        Assert.Equal(heatF, SimpleAverage.DegreeDays(DegreeDayCutoff.None, minimumF, maximumF, baseF, null), 1e-12);

    // wausharaargus.com, "Calculating growing degree days" (SEEN); wfin.com, Ohio State Extension text (SEEN); Iowa State Agron 541 (SEEN). In °F.
    [Theory]
    [InlineData(65, 90, 25.5)]
    [InlineData(46, 72, 11)]
    [InlineData(42, 63, 6.5)]
    [InlineData(63, 87, 24.5)]
    [InlineData(50, 70, 10)]
    public void Worked_examples_of_maize_heat_between_50_and_86_fahrenheit(double minimumF, double maximumF, double heatF) =>
        Assert.Equal(heatF, AverageWithLimitedExtremes.DegreeDays(DegreeDayCutoff.Horizontal, minimumF, maximumF, 50, 86), 1e-12);

    // wausharaargus.com (SEEN): the three days together are 43.
    [Fact]
    public void The_worked_examples_three_days_of_maize_heat_sum_to_43_fahrenheit_days()
    {
        var sums = new double[3];
        HeatSum.Accumulate(DegreeDayMethod.AverageWithLimitedExtremes, DegreeDayCutoff.Horizontal, [65, 46, 42], [90, 72, 63], 50, 86, [0], sums);
        Assert.Equal([25.5, 36.5, 43.0], sums);
    }
}
