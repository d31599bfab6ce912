using CsCheck;
using GddWatch.Agronomy.Backtesting;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;
using Xunit;

namespace GddWatch.Tests.Facts;

/// <summary>Whole years of the lawn under the sample's treatments, for cool-season and warm-season turf in both hemispheres.</summary>
public sealed class WholeYearTests
{
    // What an adviser expects of a year, without a source: common practice.
    private static readonly string[] CoolYear = ["spring-pre-emergent", "spring-feeding", "broadleaf-spring", "levelling-spring", "overseeding", "aeration-autumn", "autumn-feeding", "broadleaf-autumn"];
    private static readonly string[] WarmYear = ["spring-pre-emergent", "warm-season-seeding", "warm-season-feeding", "levelling-warm", "autumn-pre-emergent-warm"];

    /// <summary>By how much the southern site's weather comes later [days]; the dates of the file move by 181, so that all move by 182, one either way.</summary>
    private const int WeatherShiftDays = 182;

    [Theory]
    [InlineData(41.0, TurfType.CoolSeason)]
    [InlineData(-41.0, TurfType.CoolSeason)]
    [InlineData(33.0, TurfType.WarmSeason)]
    [InlineData(-33.0, TurfType.WarmSeason)]
    public void Every_task_of_the_year_opens_once_and_closes_and_they_come_in_the_order_of_practice(double latitude, TurfType turf)
    {
        IReadOnlyList<Window> windows = Years(latitude, turf);
        string[] expected = turf == TurfType.CoolSeason ? CoolYear : WarmYear;
        int southShift = latitude < 0 ? AnnualDay.HalfYearDays : 0;
        double last = 0;
        foreach (string id in expected)
        {
            Window[] opened = [.. windows.Where(window => window.Treatment.Id == id && window.FirstOpening is not null)];
            Assert.True(opened.Length >= 8, $"{id} opened in {opened.Length} seasons.");
            Assert.All(opened, window => Assert.NotNull(window.LastClosing));
            double day = opened.Average(window => (double)window.FirstOpening!.Day.AddDays(-southShift).DayOfYear);
            Assert.True(day >= last - 12, $"{id} opens on day {day} of its year, before {last}.");
            last = day;
        }
    }

    [Theory]
    [InlineData(41.0, TurfType.CoolSeason)]
    [InlineData(33.0, TurfType.WarmSeason)]
    public void A_southern_site_with_the_same_weather_half_a_year_later_has_the_same_year_half_a_year_later(double latitude, TurfType turf)
    {
        IReadOnlyList<Window> north = Years(latitude, turf);
        IReadOnlyList<Window> south = Years(-latitude, turf);
        int compared = 0;
        foreach (Window window in north.Where(window => window.FirstOpening is not null && window.Season.Year >= 2022))
        {
            // The sun's own year is not quite the same in the south, so water is left out: the earth is nearest to the sun in January.
            if (window.Treatment.Work == WorkKind.Watering) continue;
            DateOnly expected = window.FirstOpening!.Day.AddDays(WeatherShiftDays);
            int[] distances = [.. south.Where(other => other.Treatment.Id == window.Treatment.Id && other.FirstOpening is not null).Select(other => Math.Abs(other.FirstOpening!.Day.DayNumber - expected.DayNumber))];
            if (expected > new DateOnly(2024, 6, 30)) continue;
            Assert.True(distances.Length > 0 && distances.Min() <= 1, $"{window.Treatment.Id} {window.Season.Year}: {expected}, nearest {(distances.Length > 0 ? distances.Min() : -1)} days away.");
            compared++;
        }

        Assert.True(compared >= 10);
    }

    [Fact]
    public void Judging_any_treatment_of_the_sample_day_by_day_equals_judging_its_whole_season_whatever_the_weather() =>
        Gen.Double[-5, 5].Array[1500].Sample(
            noise =>
            {
                double departure = 0;
                DailySeries series = Weather(latitude: 38, day => departure = 0.75 * departure + noise[day.DayNumber % noise.Length]);
                Site site = Lawn(38, TurfType.CoolSeason, TurfType.WarmSeason);
                SiteMetrics all = SiteMetrics.Of(series, site);
                foreach (Treatment treatment in Seasons.Sample.Treatments)
                {
                    Season season = treatment.Season.BeginningIn(2023, site.Hemisphere);
                    Window whole = WindowJudge.JudgeSeason(treatment, all, season, season.Span.Last);
                    for (DateOnly day = season.Span.First.AddDays(3); day <= season.Span.Last; day = day.AddDays(17))
                    {
                        Window then = WindowJudge.JudgeSeason(treatment, SiteMetrics.Of(series.Until(day)!, site), season, day);
                        Transition expected = whole.Transitions.Last(transition => transition.Day <= day);
                        Assert.True(expected.State == then.State && expected.Day == then.Since, $"{treatment.Id} on {day}: {then.State} since {then.Since}, in the whole {expected.State} since {expected.Day}.");
                    }
                }
            },
            iter: 3,
            seed: "0000KXKkWK54");

    private static IReadOnlyList<Window> Years(double latitude, TurfType turf)
    {
        return Backtest.Seasons(Seasons.Sample.Treatments, SiteMetrics.Of(Weather(latitude, _ => 0), Lawn(latitude, turf) with { SoilTemperature = SoilSource.Measured }));
    }

    private static DailySeries Weather(double latitude, Func<DateOnly, double> departureC)
    {
        int shift = latitude < 0 ? WeatherShiftDays : 0;
        double mean = Math.Abs(latitude) > 36 ? 11 : 18;
        var builder = new DailySeriesBuilder();
        for (var day = new DateOnly(2009, 1, 1); day <= new DateOnly(2024, 12, 31); day = day.AddDays(1))
        {
            double air = mean + (mean > 15 ? 10 : 13) * Math.Sin(2 * Math.PI * (day.AddDays(-shift).DayOfYear - 105) / 365) + departureC(day);
            builder.Put(day, WeatherVariable.MinimumAirC, air - 6);
            builder.Put(day, WeatherVariable.MaximumAirC, air + 6);
            builder.Put(day, WeatherVariable.PrecipitationMm, day.DayNumber % 4 == 0 ? 12 : 0);
            builder.Put(day, WeatherVariable.Soil5CmC, air + 1.5);
            builder.Put(day, WeatherVariable.Soil10CmC, air + 1.5);
        }

        return builder.Build()!;
    }

    private static Site Lawn(double latitude, params TurfType[] turf) => new()
    {
        Id = "some-lawn",
        Name = "Some Lawn",
        Latitude = latitude,
        Longitude = 0,
        ElevationM = 100,
        TimeZone = "UTC",
        Turf = turf,
        Grass = turf.Contains(TurfType.WarmSeason) ? ["bermudagrass"] : ["tall-fescue"],
        Soil = SoilTexture.Loam,
        History = ["grubs"],
    };
}
