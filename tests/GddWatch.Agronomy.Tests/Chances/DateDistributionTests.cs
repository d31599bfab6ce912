using CsCheck;
using GddWatch.Agronomy.Chances;
using Xunit;

namespace GddWatch.Agronomy.Tests.Chances;

public sealed class DateDistributionTests
{
    private static readonly Gen<(int?[] Dates, int Certain)> Anything =
        Gen.Select(Gen.Int[-10, 50].Select(day => day < 0 ? (int?)null : day).Array[1, 20], Gen.Int[-1, 10]);

    [Fact]
    public void Chances_add_to_one_and_never_fall() =>
        Anything.Sample((dates, certain) =>
        {
            var distribution = DateDistribution.Of(dates, 50, certain, 0.3);
            double sum = distribution.Never;
            for (int day = 0; day <= 50; day++)
            {
                double that = distribution.By(day) - distribution.By(day - 1);
                Assert.True(that >= -1e-12);
                sum += that;
            }

            Assert.Equal(1, sum, 9);
            Assert.Equal(dates.Count(date => date is null) / (double)dates.Length, distribution.Never, 9);
        });

    [Fact]
    public void Nothing_is_spread_out_of_or_into_the_days_that_the_forecast_decides() =>
        Anything.Sample((dates, certain) =>
        {
            var distribution = DateDistribution.Of(dates, 50, certain, 0.3);
            for (int day = 0; day <= certain; day++) Assert.Equal(dates.Count(date => date <= day) / (double)dates.Length, distribution.By(day), 9);
        });

    [Fact]
    public void Futures_that_agree_are_certain_and_more_of_them_stay_so() =>
        Gen.Select(Gen.Int[0, 50], Gen.Int[1, 30]).Sample((day, futures) =>
        {
            foreach (int count in (int[])[futures, futures + 1])
            {
                var distribution = DateDistribution.Of([.. Enumerable.Repeat((int?)day, count)], 50, -1, 0.3);
                Assert.Equal(0, distribution.By(day - 1));
                Assert.Equal(1, distribution.By(day), 12);
                Assert.Equal((day, day), distribution.Range());
                Assert.Equal(day, distribution.Quantile(0.5));
            }
        });

    [Fact]
    public void The_range_holds_about_eighty_percent()
    {
        var distribution = DateDistribution.Of([.. Enumerable.Range(1, 100).Select(day => (int?)day)], 120, -1, 0);
        Assert.Equal((11, 90), distribution.Range());
        Assert.Equal(50, distribution.Quantile(0.5));
    }

    [Fact]
    public void The_range_holds_the_median_and_is_as_near_to_eighty_percent_as_rounding_its_ends_allows() =>
        Anything.Sample((dates, certain) =>
        {
            var distribution = DateDistribution.Of(dates, 50, certain, 0.3);
            (int First, int? Last) range = distribution.Range();
            int? median = distribution.Quantile(0.5);
            if (distribution.Never < 1) Assert.True(range.First <= (median ?? 51) && (range.Last ?? 51) >= (median ?? 51));
            // Type 8 of Hyndman & Fan 1996: the chance below the 10 % quantile of n values (SEEN).
            double low = Math.Max(0, (0.1 * (dates.Length + 1 / 3.0) - 1 / 6.0) / dates.Length);
            Assert.True(distribution.By(range.First - 2) <= low + 1e-9, "The first day lies more than a day after the 10 % quantile.");
            Assert.True(distribution.By((range.Last ?? 50) + 1) >= 1 - low - 1e-9 || range.Last is null || range.Last == 50, "The last day lies more than a day before the 90 % quantile.");
            // Outwards from both quantiles is one of the four ways.
            (int, int?) outward = (Enumerable.Range(0, 51).First(day => day == 50 || distribution.By(day) > low + 1e-12), distribution.Quantile(1 - low));
            Assert.True(Math.Abs(distribution.Holding(range) - (1 - 2 * low)) <= Math.Abs(distribution.Holding(outward) - (1 - 2 * low)) + 1e-8);
        });

    [Fact]
    public void The_ends_are_rounded_together_so_that_a_short_range_does_not_hold_more_than_it_must()
    {
        // One day in four each: with all four it would be certain, with three 75 %; the two wanted ends leave 86.7 % between them (type 8, n = 4).
        var even = DateDistribution.Of([10, 11, 12, 13], 40, -1, 0);
        Assert.Equal((10, 12), even.Range());
        Assert.Equal(0.75, even.Holding(even.Range()), 12);
        Assert.Equal(1, even.Holding((0, null)), 12);
        Assert.Equal(0.5, DateDistribution.Of([10, null], 40, -1, 0).Holding((11, null)), 12);
    }

    [Fact]
    public void The_range_is_open_where_it_may_not_come_at_all()
    {
        var distribution = DateDistribution.Of([10, 12, 14, null, null, null], 40, -1, 0);
        Assert.Null(distribution.Range().Last);
        Assert.Equal(0.5, distribution.Never, 12);
        Assert.Null(distribution.Quantile(0.6));
    }

    [Fact]
    public void A_date_beyond_the_season_is_refused() =>
        Assert.Contains("allowed is 0 to 40", Assert.Throws<ArgumentOutOfRangeException>(() => DateDistribution.Of([41], 40, -1, 0)).Message);
}
