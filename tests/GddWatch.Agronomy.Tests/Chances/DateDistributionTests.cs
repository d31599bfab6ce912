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
