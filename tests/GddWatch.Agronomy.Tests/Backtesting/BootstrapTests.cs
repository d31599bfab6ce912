using GddWatch.Agronomy.Backtesting;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;
using Xunit;

namespace GddWatch.Agronomy.Tests.Backtesting;

public sealed class BootstrapTests
{
    private static double[][] Singly(IEnumerable<double> values) => [.. values.Select(value => (double[])[value])];

    [Fact]
    public void Of_two_groups_the_mean_lies_at_either_end_as_often_as_two_coins_agree()
    {
        // Two draws of two: both the lower 1/4, one of each 1/2, both the upper 1/4, exactly.
        double[] means = [.. Bootstrap.Resamples(2, new Random(1).Next, 40_000).Select(chosen => (double)chosen.Sum() / 2)];
        Assert.Equal(0.25, means.Count(mean => mean == 0) / 40_000.0, 0.01);
        Assert.Equal(0.50, means.Count(mean => mean == 0.5) / 40_000.0, 0.01);
        ConfidenceInterval half = Bootstrap.Percentile(Singly([0, 10]), drawn => drawn.Average(), new Random(1).Next, level: 0.4)!.Value;
        Assert.Equal((5, 5), (half.Low, half.High));
    }

    /// <summary>Against the normal theory of a mean: s/√n, with the quantiles of Math.NET's normal distribution.</summary>
    [Fact]
    public void The_interval_of_a_mean_is_that_of_the_normal_distribution()
    {
        double[] sample = [.. Normal.Samples(new Random(7), 110, 12).Take(200)];
        double error = Math.Sqrt(sample.PopulationVariance() / sample.Length);
        ConfidenceInterval found = Bootstrap.Percentile(Singly(sample), drawn => drawn.Average(), new Random(3).Next, draws: 4000)!.Value;
        Assert.Equal(Normal.InvCDF(sample.Mean(), error, 0.025), found.Low, 0.15 * error);
        Assert.Equal(Normal.InvCDF(sample.Mean(), error, 0.975), found.High, 0.15 * error);
    }

    [Fact]
    public void About_nineteen_of_twenty_intervals_hold_the_true_mean()
    {
        var random = new Random(11);
        int holds = 0;
        for (int trial = 0; trial < 300; trial++)
        {
            ConfidenceInterval found = Bootstrap.Percentile(Singly(Normal.Samples(random, 0, 1).Take(30)), drawn => drawn.Average(), random.Next, draws: 300)!.Value;
            if (found.Low <= 0 && found.High >= 0) holds++;
        }

        // 30 values are few: the percentile interval is known to hold a little less often than it says. Three standard errors of 300 trials are 4 points.
        Assert.InRange(holds / 300.0, 0.88, 0.985);
    }

    [Fact]
    public void Sites_of_one_year_are_drawn_together()
    {
        // Two sites that always agree are one piece of news: the interval is as wide as with one of them.
        double[] years = [3, -1, 4, -1, 5, -9, 2, -6];
        ConfidenceInterval one = Bootstrap.Percentile(Singly(years), drawn => drawn.Average(), new Random(5).Next)!.Value;
        ConfidenceInterval two = Bootstrap.Percentile<double>([.. years.Select(year => (double[])[year, year])], drawn => drawn.Average(), new Random(5).Next)!.Value;
        Assert.Equal(one, two);
    }

    [Fact]
    public void One_group_has_no_interval_and_the_same_seed_gives_the_same_one()
    {
        Assert.Null(Bootstrap.Percentile(Singly([4]), drawn => drawn.Average(), new Random(1).Next));
        double[] values = [1, 2, 5, 9];
        Assert.Equal(
            Bootstrap.Percentile(Singly(values), drawn => drawn.Average(), new Random(42).Next),
            Bootstrap.Percentile(Singly(values), drawn => drawn.Average(), new Random(42).Next));
    }
}
