using GddWatch.Agronomy.Windows;
using Xunit;

namespace GddWatch.Tests.Facts;

/// <summary>
/// When the windows open, as medians over years: common practice, without a source. Checked over the invented climates and over real measured weather.
/// </summary>
public sealed class FactsOfTheTradeTests
{
    private static readonly int LateMarch = new DateOnly(2023, 3, 20).DayOfYear;
    private static readonly int EarlyMay = new DateOnly(2023, 5, 10).DayOfYear;
    private static readonly int EndOfMarch = new DateOnly(2023, 3, 31).DayOfYear;
    private static readonly int MidMay = new DateOnly(2023, 5, 12).DayOfYear;
    private static readonly int AboutFirstOfJune = new DateOnly(2023, 6, 4).DayOfYear;
    private static readonly int TenthOfAugust = new DateOnly(2023, 8, 10).DayOfYear;
    private static readonly int MidSeptember = new DateOnly(2023, 9, 15).DayOfYear;

    [Theory]
    [InlineData("north-common")]
    [InlineData("quarry-park")]
    public async Task At_the_cold_winter_samples_spring_pre_emergent_opens_from_late_March_to_early_May(string site) =>
        Assert.InRange(Seasons.MedianOpeningDay(await Seasons.OfSampleAsync(site), "spring-pre-emergent"), LateMarch, EarlyMay);

    [Theory]
    [InlineData("pecan-court")]
    [InlineData("harbor-lawn")]
    public async Task At_the_warm_samples_spring_pre_emergent_opens_in_March_or_before(string site) =>
        Assert.InRange(Seasons.MedianOpeningDay(await Seasons.OfSampleAsync(site), "spring-pre-emergent"), 1, EndOfMarch);

    [Theory]
    [InlineData("north-common")]
    [InlineData("quarry-park")]
    [InlineData("mill-green")]
    public async Task At_the_samples_between_37_and_44_north_grub_preventive_opens_from_mid_May_to_about_1_June_and_overseeding_in_August_or_by_mid_September(string site)
    {
        IReadOnlyList<Window> windows = await Seasons.OfSampleAsync(site);
        Assert.InRange(Seasons.MedianOpeningDay(windows, "grub-preventive"), MidMay, AboutFirstOfJune);
        Assert.InRange(Seasons.MedianOpeningDay(windows, "overseeding"), TenthOfAugust, MidSeptember);
    }

    // Lawns with cold winters inland, where the common practice was formed. Left out, with the reason: Bedford and Salem reach 350 °F-days on 8 and 7 May,
    // since their springs are milder than their latitude; the coasts (Kingston, Durham) and the mountains reach it later, since the air is cool.
    [Theory]
    [InlineData("IA_Des_Moines_17_E", 41.56, -93.29, 280)]
    [InlineData("NE_Lincoln_8_ENE", 40.85, -96.57, 360)]
    [InlineData("MO_Chillicothe_22_ENE", 39.87, -93.15, 250)]
    [InlineData("SD_Sioux_Falls_14_NNE", 43.73, -96.62, 490)]
    [InlineData("NY_Millbrook_3_W", 41.79, -73.74, 126)]
    public async Task At_real_inland_stations_between_37_and_44_north_all_three_windows_open_when_practice_says(string station, double latitude, double longitude, double elevationM)
    {
        IReadOnlyList<Window> windows = await Seasons.OfStationAsync(station, latitude, longitude, elevationM);
        Assert.InRange(Seasons.MedianOpeningDay(windows, "spring-pre-emergent"), LateMarch, EarlyMay);
        Assert.InRange(Seasons.MedianOpeningDay(windows, "grub-preventive"), MidMay, AboutFirstOfJune);
        Assert.InRange(Seasons.MedianOpeningDay(windows, "overseeding"), TenthOfAugust, MidSeptember);
    }

    [Theory]
    [InlineData("AL_Selma_13_WNW", 32.46, -87.24, 59)]
    [InlineData("LA_Monroe_26_N", 32.88, -92.12, 27)]
    [InlineData("GA_Watkinsville_5_SSE", 33.78, -83.39, 226)]
    [InlineData("TX_Austin_33_NW", 30.62, -98.08, 413)]
    public async Task At_real_warm_stations_spring_pre_emergent_opens_in_March_or_before_and_grub_preventive_not_before_May(string station, double latitude, double longitude, double elevationM)
    {
        IReadOnlyList<Window> windows = await Seasons.OfStationAsync(station, latitude, longitude, elevationM);
        Assert.InRange(Seasons.MedianOpeningDay(windows, "spring-pre-emergent"), 1, EndOfMarch);
        Assert.Equal(new DateOnly(2023, 5, 1).DayOfYear, Seasons.MedianOpeningDay(windows, "grub-preventive"), tolerance: 1);
    }

    [Fact]
    public async Task No_window_opens_twice_in_a_season_at_any_of_these_stations()
    {
        IReadOnlyList<Window> windows =
        [
            .. await Seasons.OfStationAsync("IA_Des_Moines_17_E", 41.56, -93.29, 280),
            .. await Seasons.OfStationAsync("GA_Watkinsville_5_SSE", 33.78, -83.39, 226),
            .. await Seasons.OfSampleAsync("mill-green"),
        ];
        // What is paused by a day's weather, such as weed control in heat, stands open again after it; nothing else does.
        Assert.Equal(0, windows.Where(window => window.Treatment.Paused is null).Sum(window => window.Reopenings));
    }

    [Theory]
    [InlineData("IN_Bedford_5_WNW", 38.89, -86.57, 233)]
    [InlineData("VA_Charlottesville_2_SSE", 37.99, -78.47, 344)]
    [InlineData("MO_Salem_10_W", 37.63, -91.72, 367)]
    [InlineData("TN_Crossville_7_NW", 36.01, -85.13, 573)]
    public async Task Between_33_and_40_north_levelling_falls_in_mid_spring_or_early_autumn_for_cool_season_turf_and_in_June_to_July_for_warm(string station, double latitude, double longitude, double elevationM)
    {
        IReadOnlyList<Window> windows = await Seasons.OfStationAsync(station, latitude, longitude, elevationM);
        Assert.InRange(Seasons.MedianOpeningDay(windows, "levelling-spring"), new DateOnly(2023, 4, 10).DayOfYear, new DateOnly(2023, 5, 31).DayOfYear);
        Assert.InRange(Seasons.MedianOpeningDay(windows, "levelling-autumn"), new DateOnly(2023, 8, 10).DayOfYear, new DateOnly(2023, 9, 30).DayOfYear);
        Assert.InRange(Seasons.MedianOpeningDay(windows, "levelling-warm"), new DateOnly(2023, 6, 1).DayOfYear, new DateOnly(2023, 7, 31).DayOfYear);
    }

    [Theory]
    [InlineData("IN_Bedford_5_WNW", 38.89, -86.57, 233)]
    [InlineData("VA_Charlottesville_2_SSE", 37.99, -78.47, 344)]
    [InlineData("MO_Salem_10_W", 37.63, -91.72, 367)]
    public async Task Between_36_and_40_north_warm_season_seeding_opens_from_late_May_into_June(string station, double latitude, double longitude, double elevationM) =>
        Assert.InRange(
            Seasons.MedianOpeningDay(await Seasons.OfStationAsync(station, latitude, longitude, elevationM), "warm-season-seeding"),
            new DateOnly(2023, 5, 18).DayOfYear, new DateOnly(2023, 6, 30).DayOfYear);

    [Fact]
    public async Task No_day_above_the_heat_limit_is_ever_offered_for_weed_killers()
    {
        IReadOnlyList<Window> windows = await Seasons.OfStationAsync("IN_Bedford_5_WNW", 38.89, -86.57, 233);
        var highs = await Seasons.HighsOfStationAsync("IN_Bedford_5_WNW", 38.89, -86.57, 233);
        int offered = 0;
        foreach (Window window in windows.Where(window => window.Treatment.Id.StartsWith("broadleaf", StringComparison.Ordinal)))
        {
            for (DateOnly day = window.Season.Span.First; day <= window.Season.Span.Last; day = day.AddDays(1))
            {
                WindowState? state = window.Transitions.LastOrDefault(transition => transition.Day <= day)?.State;
                if (state is not (WindowState.Open or WindowState.Closing)) continue;
                offered++;
                // 85 °F; a day without a reading is not judged by one.
                Assert.False(highs(day) >= (85 - 32) / 1.8 + 1e-9, $"{day} had {highs(day)} °C.");
            }
        }

        Assert.True(offered > 500);
    }

    [Fact]
    public async Task No_weed_killer_is_offered_on_warm_season_turf_that_is_greening_up()
    {
        IReadOnlyList<Window> windows = await Seasons.OfSampleAsync("pecan-court");
        int seasons = 0;
        foreach (Window cut in windows.Where(window => window.Treatment.Id == "first-cut" && window.PastBest is not null))
        {
            // The short first cut is past its best at 35 % of the usual peak growth: the grass is greening up on that day.
            Window weeds = windows.Single(window => window.Treatment.Id == "broadleaf-warm" && window.Season.Year == cut.Season.Year);
            WindowState? state = weeds.Transitions.LastOrDefault(transition => transition.Day <= cut.PastBest!.Day)?.State;
            Assert.False(state is WindowState.Open or WindowState.Closing);
            seasons++;
        }

        Assert.True(seasons > 5);
    }

    [Theory]
    [InlineData("north-common")]
    [InlineData("quarry-park")]
    [InlineData("mill-green")]
    public async Task Levelling_and_aeration_of_cool_season_turf_are_never_open_together_with_the_summer_pause(string site)
    {
        IReadOnlyList<Window> windows = await Seasons.OfSampleAsync(site);
        foreach (Window pause in windows.Where(window => window.Treatment.Id == "summer-pause" && window.FirstOpening is not null))
        {
            foreach (Window work in windows.Where(window => window.Treatment.Id is "levelling-spring" && window.Season.Year == pause.Season.Year && window.LastClosing is not null))
            {
                Assert.True(work.LastClosing!.Day <= pause.FirstOpening!.Day, $"{work.Treatment.Id} {work.Season.Year}");
            }

            foreach (Window work in windows.Where(window => window.Treatment.Id is "levelling-autumn" or "aeration-autumn" && window.Season.Year == pause.Season.Year && window.FirstOpening is not null))
            {
                Assert.True(work.FirstOpening!.Day >= pause.LastClosing!.Day, $"{work.Treatment.Id} {work.Season.Year}: {work.FirstOpening.Day}, pause until {pause.LastClosing.Day}");
            }
        }
    }

    [Theory]
    [InlineData("pecan-court")]
    [InlineData("harbor-lawn")]
    public async Task In_the_south_no_grub_window_is_past_its_best_in_its_first_weeks(string site) => Assert.All(
        (await Seasons.OfSampleAsync(site)).Where(window => window.Treatment.Id.StartsWith("grub-preventive", StringComparison.Ordinal) && window is { FirstOpening: not null, PastBest: not null }),
        window => Assert.True(window.PastBest!.Day >= window.FirstOpening!.Day.AddDays(25), $"{window.Treatment.Id} {window.Season.Year}"));

    [Fact]
    public void Every_pre_emergent_and_every_seeding_for_the_same_turf_exclude_each_other_both_ways()
    {
        Agronomy.Treatments.Treatment[] all = [.. Seasons.Sample.Treatments];
        foreach (Agronomy.Treatments.Treatment barrier in all.Where(each => each.Id.Contains("pre-emergent", StringComparison.Ordinal)))
        {
            foreach (Agronomy.Treatments.Treatment seeding in all.Where(each => each.Work == Agronomy.Places.WorkKind.Seeding && each.Turf.Intersect(barrier.Turf).Any()))
            {
                Assert.Contains(barrier.Excludes, exclusion => exclusion.Treatment == seeding.Id);
                Assert.Contains(seeding.Excludes, exclusion => exclusion.Treatment == barrier.Id);
            }
        }
    }
}
