using GddWatch.Agronomy.Backtesting.Fitting;
using MathNet.Numerics;
using MathNet.Numerics.Statistics;
using Xunit;

namespace GddWatch.Agronomy.Tests.Backtesting;

/// <summary>The closed formulae of Yang, Logan and Coffey 1995, with the figures of science reference 5.4 (CALC).</summary>
public sealed class YangLoganCoffeyTests
{
    private static readonly double[] Days = [62, 45, 38, 30, 26, 51, 31];
    private static readonly double[] MeansC = [11.8, 13.1, 14.6, 15.9, 17.4, 12.5, 16.7];

    [Fact]
    public void Exact_data_give_the_base_that_they_were_made_with()
    {
        var exact = new YangLoganCoffey([150, 60, 37.5, 30], [12, 15, 18, 20]);
        Assert.All((double[])[exact.LeastDeviationInHeatC, exact.LeastDeviationInDaysC, exact.LeastCoefficientOfVariationC, exact.NoSlopeC], x => Assert.Equal(10.0, x, 1e-9));
    }

    [Fact]
    public void Noisy_data_give_the_published_criteria_each_its_own_base()
    {
        var noisy = new YangLoganCoffey(Days, MeansC);
        Assert.Equal(7.413328, noisy.LeastDeviationInHeatC, 1e-6);
        Assert.Equal(7.291500, noisy.LeastDeviationInDaysC, 1e-6);
        Assert.Equal(7.280824, noisy.LeastCoefficientOfVariationC, 1e-6);
        Assert.Equal(7.256306, noisy.NoSlopeC, 1e-6);
    }

    /// <summary>At each base its own criterion, reckoned by Math.NET, is smaller than beside it; the slope, by Math.NET's line, is zero.</summary>
    [Fact]
    public void Each_base_is_where_its_criterion_is_least_by_another_library()
    {
        var noisy = new YangLoganCoffey(Days, MeansC);
        double mean = MeansC.Mean();
        double[] Heat(double x) => [.. Days.Zip(MeansC, (d, t) => d * (t - x))];
        Assert.Equal(0, Fit.Line(MeansC, Heat(noisy.NoSlopeC)).B, 1e-9);
        IsLeast(noisy.LeastDeviationInHeatC, x => Heat(x).StandardDeviation());
        IsLeast(noisy.LeastDeviationInDaysC, x => Heat(x).StandardDeviation() / (mean - x));
        IsLeast(noisy.LeastCoefficientOfVariationC, x => Heat(x).StandardDeviation() / Heat(x).Mean());
    }

    [Fact]
    public void The_slope_of_the_grid_search_is_that_of_another_librarys_regression()
    {
        int[] once = [.. Days.Select(_ => 1)];
        Assert.Equal(Fit.Line(MeansC, Days).B, FitGrid.Slope(MeansC, Days, once), 1e-10);
        // A weight of two is the same point twice.
        int[] twice = [2, 1, 1, 1, 1, 1, 1];
        Assert.Equal(Fit.Line([MeansC[0], .. MeansC], [Days[0], .. Days]).B, FitGrid.Slope(MeansC, Days, twice), 1e-10);
    }

    [Fact]
    public void Two_events_are_too_few() => Assert.Throws<ArgumentException>(() => new YangLoganCoffey([30, 40], [12, 11]));

    private static void IsLeast(double x, Func<double, double> criterion)
    {
        Assert.True(criterion(x) < criterion(x - 0.001));
        Assert.True(criterion(x) < criterion(x + 0.001));
    }
}
