using CsCheck;
using GddWatch.Agronomy.Chances;
using Xunit;

namespace GddWatch.Agronomy.Tests.Chances;

public sealed class DateScoresTests
{
    /// <summary>Science reference 5.3 (CALC): members 100 104 108 110 118, truth 106.</summary>
    private static readonly double[] Members = [100, 104, 108, 110, 118];

    [Fact]
    public void The_worked_example_of_an_ensemble_comes_out()
    {
        Assert.Equal(1.84, DateScores.Crps(Members, 106, fair: false), 10);
        Assert.Equal(1.00, DateScores.Crps(Members, 106, fair: true), 10);
    }

    [Fact]
    public void The_worked_examples_of_a_normal_distribution_come_out()
    {
        // Science reference 5.3 (CALC), formula of Gneiting & Raftery 2007.
        Assert.Equal(1.665696, DateScores.CrpsNormal(108, 6, 106), 6);
        Assert.Equal(0.233695, DateScores.CrpsNormal(0, 1, 0), 6);
    }

    [Fact]
    public void One_date_is_scored_by_how_far_it_is_off() => Assert.Equal(7, DateScores.Crps([100], 107, fair: false), 10);

    [Fact]
    public void A_distribution_of_whole_days_is_scored_as_the_ensemble_that_it_is_made_of() =>
        Gen.Int[0, 40].Array[2, 15].Select(Gen.Int[0, 40]).Sample((days, truth) =>
        {
            var distribution = DateDistribution.Of([.. days.Select(day => (int?)day)], 60, -1, spread: 0);
            double[] members = [.. days.Select(day => (double)day)];
            Assert.Equal(DateScores.Crps(members, truth, fair: false), DateScores.Crps(distribution, truth, fair: false), 9);
            Assert.Equal(DateScores.Crps(members, truth, fair: true), DateScores.Crps(distribution, truth, fair: true), 9);
        });

    [Fact]
    public void A_season_that_never_opened_is_scored_as_the_day_after_its_end()
    {
        var distribution = DateDistribution.Of([10, 20, null], 29, -1, spread: 0);
        Assert.Equal(DateScores.Crps([10, 20, 30], 30, fair: true), DateScores.Crps(distribution, null, fair: true), 9);
    }

    [Fact]
    public void What_the_spreading_adds_within_a_future_is_not_taken_for_disagreement_between_them()
    {
        // Two dates drawn from different futures lie as far apart as the fair score reckons, by counting them out.
        var distribution = DateDistribution.Of([10, 14, 21], 60, -1, spread: 0.4);
        double[][] chances = [.. new[] { 10, 14, 21 }.Select(day => Alone(day, distribution))];
        double across = 0;
        for (int i = 0; i < 3; i++)
        {
            for (int j = 0; j < 3; j++)
            {
                if (i == j) continue;
                for (int a = 0; a <= 60; a++)
                {
                    for (int b = 0; b <= 60; b++) across += chances[i][a] * chances[j][b] * Math.Abs(a - b) / 6;
                }
            }
        }

        double away = Enumerable.Range(0, 61).Sum(day => (distribution.By(day) - distribution.By(day - 1)) * Math.Abs(day - 16));
        Assert.Equal(away - across / 2, DateScores.Crps(distribution, 16, fair: true), 6);
    }

    /// <summary>What one of the three dates becomes by a normal kernel of 0.4 times their standard deviation over whole days, cut at three deviations.</summary>
    private static double[] Alone(int day, DateDistribution whole)
    {
        double mean = 15, deviation = 0.4 * Math.Sqrt((25.0 + 1 + 36) / 2);
        Assert.Equal(15, mean);
        int reach = (int)Math.Ceiling(3 * deviation);
        double[] chances = [.. Enumerable.Range(0, whole.LastPlace + 1).Select(place => Math.Abs(place - day) > reach ? 0 : Math.Exp(-Math.Pow(place - day, 2) / (2 * deviation * deviation)))];
        return [.. chances.Select(chance => chance / chances.Sum())];
    }
}
