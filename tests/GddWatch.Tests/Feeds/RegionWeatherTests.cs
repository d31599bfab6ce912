using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Weather.Filling;
using GddWatch.Feeds;
using GddWatch.Feeds.Gathering;
using GddWatch.Tests.Feeds.Services;
using Xunit;

namespace GddWatch.Tests.Feeds;

/// <summary>Sites beside each other.</summary>
public sealed class RegionWeatherTests
{
    private static readonly DateOnly First = new(2025, 3, 1);
    private static readonly DateOnly Hole = First.AddDays(40);

    [Fact]
    public void A_hole_is_filled_by_a_site_near_by_and_not_by_one_far_away()
    {
        Assert.Equal(FillingRung.NeighbouringSite, RungAt(Site("a", 41.6), Days(true, 0), Site("b", 41.9), Days(false, 1)));
        Assert.Equal(FillingRung.BetweenNeighbours, RungAt(Site("a", 41.6), Days(true, 0), Site("b", 46.6), Days(false, 1)));
    }

    [Fact]
    public void A_site_that_reads_the_same_source_says_nothing_about_the_other()
    {
        GatheredSite one = Gathered(Site("a", 41.6), Days(false, 0, wrong: true)), other = Gathered(Site("b", 41.7), Days(false, 0, wrong: true));
        KnownWeather known = RegionWeather.Of([one, other], _ => [])[0].AsOf(First.AddDays(59))!;
        Assert.Contains(known.Doubts, doubt => doubt.Day == Hole);
        Assert.All(known.Fillings.Where(filling => filling.Day == Hole), filling => Assert.Equal(FillingRung.BetweenNeighbours, filling.Rung));
    }

    [Fact]
    public void A_doubted_reading_gives_way_to_the_other_feed_of_the_site()
    {
        DailySeries better = Days(false, 0, wrong: true), further = Days(false, 0.5);
        GatheredSite site = new(Site("a", 41.6), better, [], [], [("better", better), ("further", further)]);
        KnownWeather known = RegionWeather.Of([site], _ => [])[0].AsOf(First.AddDays(59))!;
        FilledValue[] filled = [.. known.Fillings.Where(filling => filling.Day == Hole)];
        Assert.NotEmpty(filled);
        Assert.All(filled, filling => Assert.Equal(FillingRung.SecondFeed, filling.Rung));
    }

    [Fact]
    public void Who_watches_is_told_two_steps_of_each_site_also_of_one_without_weather()
    {
        int steps = 0;
        RegionWeather.Of([Gathered(Site("a", 41.6), Days(false, 0)), new GatheredSite(Site("b", 41.7), null, [], [], [])], _ => [], () => Interlocked.Increment(ref steps));
        Assert.Equal(4, steps);
    }

    [Fact]
    public void Maxima_that_stand_a_day_late_are_told_where_a_site_near_by_shows_it_and_of_that_site_alone()
    {
        IReadOnlyList<SiteWeather> weather = RegionWeather.Of([Gathered(Site("late", 41.6), Changing(1)), Gathered(Site("punctual", 41.9), Changing(0))], _ => []);
        FeedRemark remark = Assert.Single(weather[0].Remarks);
        Assert.Contains("day late", remark.Words, StringComparison.Ordinal);
        Assert.Contains("observed-at: morning", remark.Words, StringComparison.Ordinal);
        Assert.Empty(weather[1].Remarks);
    }

    [Fact]
    public void Weather_that_takes_a_day_to_come_over_is_not_called_late()
    {
        IReadOnlyList<SiteWeather> weather = RegionWeather.Of([Gathered(Site("east", 41.6), Changing(1, minimaLateDays: 1)), Gathered(Site("west", 41.9), Changing(0))], _ => []);
        Assert.All(weather, site => Assert.Empty(site.Remarks));
    }

    private static DailySeries Changing(int lateDays, int minimaLateDays = 0)
    {
        var builder = new DailySeriesBuilder();
        for (DateOnly day = First; day < First.AddDays(200); day = day.AddDays(1))
        {
            // A swing that never repeats, the same every run (invented).
            static double MeanC(int number) => 14 + (4 * Math.Sin(number * 1.3)) + (3 * Math.Sin(number * 2.17));
            builder.Put(day, WeatherVariable.MinimumAirC, MeanC(day.DayNumber - minimaLateDays) - 20);
            builder.Put(day, WeatherVariable.MaximumAirC, MeanC(day.DayNumber - lateDays) + 5);
        }

        return builder.Build()!;
    }

    private static FillingRung RungAt(Site site, DailySeries series, Site other, DailySeries otherSeries) =>
        RegionWeather.Of([Gathered(site, series), Gathered(other, otherSeries)], _ => [])[0].AsOf(First.AddDays(59))!.Fillings.First(filling => filling.Day == Hole).Rung;

    private static GatheredSite Gathered(Site site, DailySeries series) => new(site, series, [], [], [("file", series)]);

    private static Site Site(string id, double latitude) => ServiceDesk.Site(id, latitude);

    private static DailySeries Days(bool hole, double warmerC, bool wrong = false)
    {
        var builder = new DailySeriesBuilder();
        for (DateOnly day = First; day < First.AddDays(60); day = day.AddDays(1))
        {
            if (hole && day == Hole) continue;
            double meanC = 14 + 3 * Math.Sin(day.DayNumber * 0.7) + warmerC + (wrong && day == Hole ? 38 : 0);
            builder.Put(day, WeatherVariable.MinimumAirC, meanC - 5);
            builder.Put(day, WeatherVariable.MaximumAirC, meanC + 5);
        }

        return builder.Build()!;
    }
}
