using GddWatch.Agronomy.Weather;
using GddWatch.Feeds;
using GddWatch.Feeds.Faults;
using GddWatch.Feeds.Gathering;
using Xunit;

namespace GddWatch.Tests.Feeds;

/// <summary>Several feeds of one site.</summary>
public sealed class SiteGatheringTests : IDisposable
{
    private readonly FeedFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task A_value_comes_from_the_first_feed_that_has_it()
    {
        FeedReading weather = await GatherAsync("2024-05-01,1,11,\n2024-05-02,,,5\n", "2024-05-01,7,17,7\n2024-05-02,8,18,8\n2024-05-03,9,19,9\n");

        Assert.Equal((1.0, 11.0, 7.0), (weather.At("2024-05-01"), weather.MaximumAt("2024-05-01"), weather.RainAt("2024-05-01")));
        Assert.Equal((8.0, 18.0, 5.0), (weather.At("2024-05-02"), weather.MaximumAt("2024-05-02"), weather.RainAt("2024-05-02")));
        Assert.Equal((9.0, 19.0, 9.0), (weather.At("2024-05-03"), weather.MaximumAt("2024-05-03"), weather.RainAt("2024-05-03")));
    }

    [Fact]
    public async Task A_refused_feed_does_not_cost_the_others()
    {
        FeedReading weather = await GatherAsync("", "2024-05-01,7,17,7\n");

        Assert.Equal(7.0, weather.At("2024-05-01"));
        Assert.Equal(FaultSeverity.Refused, weather.Faults[0].Severity);
    }

    [Fact]
    public async Task A_second_feed_that_contradicts_the_first_does_not_complete_its_day()
    {
        FeedReading weather = await GatherAsync("2024-05-01,,11,\n2024-05-02,5,,\n", "2024-05-01,12,17,7\n2024-05-02,1,3,8\n");

        Assert.Equal((null, 11.0), (weather.At("2024-05-01"), weather.MaximumAt("2024-05-01")));
        Assert.Equal((5.0, null), (weather.At("2024-05-02"), weather.MaximumAt("2024-05-02")));
        Assert.Contains(weather.Faults, fault => fault.Problem.StartsWith("2 temperatures could have completed", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_site_without_a_good_feed_has_no_series_but_faults()
    {
        FeedReading weather = await GatherAsync("", "");

        Assert.Null(weather.Series);
        Assert.Equal(2, weather.Faults.Count);
    }

    [Fact]
    public async Task Feeds_that_are_far_apart_of_late_are_told_and_feeds_that_agree_are_not()
    {
        string better = string.Concat(Enumerable.Range(1, 20).Select(day => $"2024-05-{day:00},5,15,0\n"));
        string apart = string.Concat(Enumerable.Range(1, 20).Select(day => $"2024-05-{day:00},{(day > 16 ? 12 : 6)},16,0\n"));
        string near = string.Concat(Enumerable.Range(1, 20).Select(day => $"2024-05-{day:00},{(day > 18 ? 12 : 6)},16,0\n"));

        Assert.Contains("more than 5 °C apart on 4 of the last 14 days", Assert.Single((await GatherAsync(better, apart)).Remarks).Words, StringComparison.Ordinal);
        Assert.Empty((await GatherAsync(better, near)).Remarks);
    }

    private async Task<FeedReading> GatherAsync(params string[] feeds)
    {
        List<IWeatherFeed> all = [];
        for (int i = 0; i < feeds.Length; i++)
        {
            folder.With($"date,tmin,tmax,rain\n{feeds[i]}", $"{i}.csv");
            all.Add(FeedFactory.Create(FeedFolder.Csv($"{i}.csv"), folder.Root, folder.Clock));
        }

        GatheredSite weather = await SiteGathering.GatherAsync(FeedFolder.SiteAt(45), all, FeedFolder.Today, TestContext.Current.CancellationToken);
        return new FeedReading(weather.Series, weather.Faults) { Remarks = weather.Remarks };
    }
}
