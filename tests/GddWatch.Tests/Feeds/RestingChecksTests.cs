using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Weather.Checks;
using GddWatch.Feeds.Gathering;
using GddWatch.Tests.Feeds.Services;
using Xunit;

namespace GddWatch.Tests.Feeds;

/// <summary>Checks that go on from one day to the next.</summary>
public sealed class RestingChecksTests
{
    private static readonly DateOnly First = new(2014, 1, 1);
    private static readonly DateOnly Begin = new(2024, 12, 1);

    // The law: what is doubted is the same whether the checks go on or are made anew. Errors of every kind are strewn over the days (invented, the same every run); one site comes days late, one changes its last
    // days, now and then an old day changes, a site is away for a day, one loses all but its last days for a day, one moves, and a new one joins.
    [Fact]
    public void What_is_doubted_each_day_is_what_checking_everything_anew_doubts()
    {
        const int Days = 45;
        var chance = new Random(20_251_128);
        double[][] minimum = new double[6][], maximum = new double[6][];
        double[] shared = Spells(chance);
        for (int site = 0; site < 6; site++) (minimum[site], maximum[site]) = Weather(shared, chance);
        double[] latitudes = [41.60, 41.72, 41.81, 41.66, 41.95, 41.55];
        var resting = new RestingChecks();
        int held = 0;
        for (int pass = 0; pass < Days; pass++)
        {
            DateOnly today = Begin.AddDays(pass);
            int last = today.DayNumber - First.DayNumber;
            // The readings of the last days come in another shape than the day before, and rarely those of long ago.
            minimum[1][last - chance.Next(1, 6)] += chance.NextDouble() - 0.5;
            maximum[1][last - chance.Next(1, 6)] += chance.Next(4) == 0 ? 14 : 0;
            if (pass % 17 == 5) maximum[chance.Next(6)][chance.Next(last - 60)] += 30;
            if (pass == 40) latitudes[3] = 41.70;
            GatheredSite[] region =
            [
                .. Enumerable.Range(0, 6).Where(site => !(site == 4 && pass == 33) && !(site == 5 && pass < 20))
                    .Select(site => Gathered(ServiceDesk.Site($"s{site}", latitudes[site]), Cut(Series(minimum[site], maximum[site], last - (site == 2 ? 3 : site == 0 ? pass % 2 : 0)), site == 1 && pass == 25))),
            ];
            IReadOnlyList<SiteWeather> goneOn = RegionWeather.Of(region, _ => [], resting: resting), anew = RegionWeather.Of(region, _ => []);
            for (int site = 0; site < region.Length; site++)
            {
                Assert.Equal(anew[site].History!.Doubts, goneOn[site].History!.Doubts);
                held += anew[site].History!.Doubts.Count(doubt => doubt.Day > today.AddDays(-30));
            }
        }

        Assert.True(held > 300, $"only {held} doubts were there to compare");
    }

    [Fact]
    public void A_walk_goes_on_over_no_days_but_its_own()
    {
        (double[] minimum, double[] maximum) = Weather(Spells(new Random(1)), new Random(2));
        var walk = new QualityWalk(Series(minimum, maximum, 400), []);
        walk.GoOn(First.AddDays(300));
        Assert.Equal(First.AddDays(300), walk.AtRest().Through);
        Assert.Throws<ArgumentException>(() => walk.AtRest().Over(Series(minimum, maximum, 299), []));
        Assert.Throws<ArgumentException>(() => walk.AtRest().Over(Series(minimum, maximum, 400).From(First.AddDays(1)), []));
    }

    private static DailySeries Cut(DailySeries series, bool isCut) => isCut ? series.From(series.LastDay.AddDays(-9)) : series;

    private static double[] Spells(Random chance)
    {
        var spells = new double[4300];
        for (int day = 1; day < spells.Length; day++) spells[day] = (0.7 * spells[day - 1]) + (6 * (chance.NextDouble() - 0.5));
        return spells;
    }

    private static (double[] Minimum, double[] Maximum) Weather(double[] shared, Random chance)
    {
        double[] minimum = new double[shared.Length], maximum = new double[shared.Length];
        for (int day = 0; day < shared.Length; day++)
        {
            double mean = 10 - (14 * Math.Cos(2 * Math.PI * (First.AddDays(day).DayOfYear - 20) / 365.25)) + shared[day] + chance.NextDouble();
            double half = 4 + (3 * chance.NextDouble());
            minimum[day] = Math.Round(mean - half, 1);
            maximum[day] = Math.Round(mean + half, 1);
            switch (chance.Next(120))
            {
                case 0: maximum[day] += 22; break;
                case 1: minimum[day] -= 24; break;
                case 2: minimum[day] = double.NaN; break;
                case 3: minimum[day] = maximum[day] = 0; break;
                case 4: (minimum[day], maximum[day]) = (maximum[day], minimum[day]); break;
                case 5 when day % 5 == 0: maximum.AsSpan(Math.Max(0, day - 24), Math.Min(day, 24)).Fill(11.5); break;
            }
        }

        return (minimum, maximum);
    }

    private static DailySeries Series(double[] minimum, double[] maximum, int last)
    {
        var builder = new DailySeriesBuilder(First, First.AddDays(last));
        builder.Put(First, WeatherVariable.MinimumAirC, minimum.AsSpan(0, last + 1));
        builder.Put(First, WeatherVariable.MaximumAirC, maximum.AsSpan(0, last + 1));
        return builder.Build()!;
    }

    private static GatheredSite Gathered(Site site, DailySeries series) => new(site, series, [], [], [("file", series)]);
}
