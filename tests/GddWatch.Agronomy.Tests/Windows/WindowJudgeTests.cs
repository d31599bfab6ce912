using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;
using Xunit;

namespace GddWatch.Agronomy.Tests.Windows;

public sealed class WindowJudgeTests
{
    [Fact]
    public void A_heat_sum_opens_on_the_day_that_the_published_season_reaches_it()
    {
        // Science reference 1.8, season-level test (CALC): simple average, base 10 °C, first day with at least 111.111 °C-days is day 132, 538.889 is day 174.
        Treatment treatment = Some.Treatment(Some.Heat(111.111), closing: Some.Heat(538.889));
        Window window = Some.Judge(treatment, Some.SmoothYears(2023, 1), Some.Site(), 2023);
        Assert.Equal(132, window.FirstOpening!.Day.DayOfYear);
        Assert.Equal(174, window.PastBest!.Day.DayOfYear);
    }

    [Fact]
    public void A_warm_spell_of_two_days_in_winter_does_not_open_the_window()
    {
        var warm = new DateOnly(2023, 2, 10);
        DailySeries calm = Some.SmoothYears(2023, 1);
        DailySeries spell = Some.SmoothYears(2023, 1, anomalyC: day => day >= warm && day < warm.AddDays(2) ? 15 : 0);
        Treatment treatment = Some.Treatment(Some.SoilRises(10));
        Assert.Equal(
            Some.Judge(treatment, calm, Some.Site(), 2023).FirstOpening!.Day,
            Some.Judge(treatment, spell, Some.Site(), 2023).FirstOpening!.Day);
    }

    [Fact]
    public void A_cold_snap_after_the_opening_does_not_open_it_again()
    {
        var snap = new DateOnly(2023, 5, 1);
        DailySeries series = Some.SmoothYears(2023, 1, anomalyC: day => day >= snap && day < snap.AddDays(8) ? -15 : 0);
        Window window = Some.Judge(Some.Treatment(Some.SoilRises(10)), series, Some.Site(), 2023);
        Assert.Equal(0, window.Reopenings);
        Assert.Single(window.Transitions, transition => transition.State == WindowState.Open);
    }

    [Fact]
    public void Every_day_of_the_season_has_a_state_and_the_window_closes_with_its_season()
    {
        Treatment treatment = Some.Treatment(Some.SoilRises(10), closing: Some.SoilRises(15));
        DailySeries series = Some.SmoothYears(2023, 1);
        WindowState previous = WindowState.Waiting;
        for (var day = new DateOnly(2023, 1, 1); day <= new DateOnly(2023, 7, 31); day = day.AddDays(1))
        {
            Window window = Some.Judge(treatment, series, Some.Site(), 2023, day);
            Assert.NotEmpty(window.Because.Sentence(ReadersUnits.Metric));
            previous = window.State;
        }

        Assert.Equal(WindowState.Closed, previous);
    }

    [Fact]
    public void A_window_whose_close_comes_first_never_opens_and_says_so()
    {
        Window window = Some.Judge(Some.Treatment(Some.Heat(500), closed: Some.Heat(100)), Some.SmoothYears(2023, 1), Some.Site(), 2023);
        Assert.Null(window.FirstOpening);
        Assert.Null(window.LastClosing);
        Assert.Equal(WindowState.Closed, window.State);
        Assert.Contains("did not open", window.Because.Sentence(ReadersUnits.Metric), StringComparison.Ordinal);
    }

    [Fact]
    public void Soil_already_warm_at_the_start_counts_from_four_weeks_before_its_usual_date_and_not_before()
    {
        // Mild winters: mean 17 °C with the soil above 10 °C on most of January. Usual 55 °F (12.8 °C) date from twelve earlier seasons.
        var already = new WhereAlreadySo(28, Temperature.FromFahrenheit(55), AnnualDay.Of(2, 15), 31);
        Treatment treatment = Some.Treatment(Some.SoilRises(10, already));
        DailySeries series = Some.SmoothYears(2010, 13, offsetC: 11);
        Window warm = Some.Judge(treatment, series, Some.Site(31, TurfType.WarmSeason), 2022);
        Window usual = Some.Judge(Some.Treatment(Some.SoilRises(12.7777)), series, Some.Site(31, TurfType.WarmSeason), 2022);
        DateOnly expected = usual.FirstOpening!.Day.AddDays(-28);
        DateOnly floor = new(2022, 1, 1);
        Assert.True(warm.FirstOpening!.Day >= floor);
        Assert.InRange(warm.FirstOpening.Day.DayNumber - Later(expected, floor).DayNumber, -1, 3);
        static DateOnly Later(DateOnly one, DateOnly other) => one > other ? one : other;
    }

    [Fact]
    public void With_fewer_than_ten_earlier_seasons_the_stated_fallback_stands_and_is_named()
    {
        var already = new WhereAlreadySo(28, Temperature.FromFahrenheit(55), AnnualDay.Of(3, 15), 31);
        Window window = Some.Judge(Some.Treatment(Some.SoilRises(10, already)), Some.SmoothYears(2020, 3, offsetC: 11), Some.Site(31, TurfType.WarmSeason), 2022);
        Assert.Equal(new DateOnly(2022, 2, 15), window.FirstOpening!.Day);
        Window before = Some.Judge(Some.Treatment(Some.SoilRises(10, already)), Some.SmoothYears(2020, 3, offsetC: 11), Some.Site(31, TurfType.WarmSeason), 2022, new DateOnly(2022, 2, 1));
        Assert.Contains("a fallback", before.Because.Sentence(ReadersUnits.Metric), StringComparison.Ordinal);
    }

    [Fact]
    public void The_usual_first_freeze_is_the_median_of_earlier_seasons_and_never_of_the_season_itself()
    {
        // The smooth year first freezes (minimum at or below 0 °C) on the same day each year, so that day is its own median.
        DailySeries series = Some.SmoothYears(2010, 13);
        DateOnly freeze = FirstFreeze(series, 2022);
        var condition = new DaysBeforeFirstFreeze(45, 0.5, Temperature.FromCelsius(0), null);
        Window window = Some.Judge(Some.Treatment(Some.SoilFalls(30), closing: condition, from: "08-10", until: "12-15"), series, Some.Site(), 2022);
        Assert.InRange(window.PastBest!.Day.DayNumber - freeze.AddDays(-45).DayNumber, -1, 1);
        DailySeries colder = Some.SmoothYears(2010, 13, anomalyC: day => day >= new DateOnly(2022, 8, 10) ? -8 : 0);
        Window sameUsual = Some.Judge(Some.Treatment(Some.SoilFalls(30), closing: condition, from: "08-10", until: "12-15"), colder, Some.Site(), 2022);
        Assert.Equal(window.PastBest.Day, sameUsual.PastBest!.Day);
    }

    [Fact]
    public void Without_ten_earlier_seasons_and_without_a_fallback_the_usual_first_freeze_is_unknown()
    {
        var condition = new DaysBeforeFirstFreeze(45, 0.5, Temperature.FromCelsius(0), null);
        Treatment treatment = Some.Treatment(condition, from: "08-10", until: "12-15");
        Window window = Some.Judge(treatment, Some.SmoothYears(2020, 3), Some.Site(), 2022, new DateOnly(2022, 9, 1));
        Assert.Equal(WindowState.Unknown, window.State);
        Assert.Contains("10 are needed", window.Because.Sentence(ReadersUnits.Metric), StringComparison.Ordinal);
    }

    [Fact]
    public void Weather_that_begins_within_the_season_leaves_that_season_unknown()
    {
        var builder = new DailySeriesBuilder();
        for (var day = new DateOnly(2023, 3, 1); day.Year == 2023; day = day.AddDays(1))
        {
            builder.Put(day, WeatherVariable.MinimumAirC, 10);
            builder.Put(day, WeatherVariable.MaximumAirC, 20);
        }

        Window window = Some.Judge(Some.Treatment(Some.SoilRises(10)), builder.Build()!, Some.Site(), 2023);
        Assert.Equal(WindowState.Unknown, window.State);
        Assert.Null(window.FirstOpening);
    }

    [Fact]
    public void A_waiting_window_is_unknown_once_the_weather_is_more_than_three_days_old()
    {
        DailySeries series = Some.SmoothYears(2023, 1).Until(new DateOnly(2023, 3, 1))!;
        SiteMetrics metrics = SiteMetrics.Of(series, Some.Site());
        Treatment treatment = Some.Treatment(Some.SoilRises(10));
        Assert.Equal(WindowState.Waiting, WindowJudge.Judge([treatment], metrics, new DateOnly(2023, 3, 4)).Windows[0].State);
        Window stale = WindowJudge.Judge([treatment], metrics, new DateOnly(2023, 3, 5)).Windows[0];
        Assert.Equal(WindowState.Unknown, stale.State);
        Assert.Contains("Wednesday 1 March 2023, 4 days before", stale.Because.Sentence(ReadersUnits.Metric), StringComparison.Ordinal);
    }

    [Fact]
    public void An_opening_straight_after_a_hole_in_the_weather_says_that_it_may_have_been_earlier()
    {
        var from = new DateOnly(2023, 3, 25);
        DailySeries full = Some.SmoothYears(2023, 1);
        var builder = new DailySeriesBuilder();
        for (int i = 0; i < full.Count; i++)
        {
            DateOnly day = full.DayAt(i);
            if (day >= from && day < from.AddDays(40)) continue;
            builder.Put(day, WeatherVariable.MinimumAirC, full.MinimumAirC[i]);
            builder.Put(day, WeatherVariable.MaximumAirC, full.MaximumAirC[i]);
        }

        Window window = Some.Judge(Some.Treatment(Some.SoilRises(10)), builder.Build()!, Some.Site(), 2023);
        Assert.True(window.MayHaveOpenedEarlier);
        Assert.Contains("may have opened earlier", window.FirstOpening!.Because.Sentence(ReadersUnits.Metric), StringComparison.Ordinal);
    }

    [Fact]
    public void A_heat_sum_over_a_long_hole_is_unknown_for_the_rest_of_its_season()
    {
        DailySeries full = Some.SmoothYears(2023, 1);
        var builder = new DailySeriesBuilder();
        for (int i = 0; i < full.Count; i++)
        {
            if (full.DayAt(i).Month == 3) continue;
            builder.Put(full.DayAt(i), WeatherVariable.MinimumAirC, full.MinimumAirC[i]);
            builder.Put(full.DayAt(i), WeatherVariable.MaximumAirC, full.MaximumAirC[i]);
        }

        Window window = Some.Judge(Some.Treatment(Some.Heat(111)), builder.Build()!, Some.Site(), 2023, new DateOnly(2023, 6, 30));
        Assert.Equal(WindowState.Unknown, window.State);
    }

    [Fact]
    public void A_window_does_not_open_on_a_filled_day_but_on_the_next_day_with_weather()
    {
        DailySeries full = Some.SmoothYears(2023, 1);
        DateOnly opening = Some.Judge(Some.Treatment(Some.Heat(111)), full, Some.Site(), 2023).FirstOpening!.Day;
        var builder = new DailySeriesBuilder();
        for (int i = 0; i < full.Count; i++)
        {
            DateOnly day = full.DayAt(i);
            if (day >= opening.AddDays(-1) && day <= opening.AddDays(1)) continue;
            builder.Put(day, WeatherVariable.MinimumAirC, full.MinimumAirC[i]);
            builder.Put(day, WeatherVariable.MaximumAirC, full.MaximumAirC[i]);
        }

        DailySeries withHole = builder.Build()!;
        Window window = Some.Judge(Some.Treatment(Some.Heat(111)), withHole, Some.Site(), 2023);
        Assert.Equal(opening.AddDays(2), window.FirstOpening!.Day);
        Window waiting = Some.Judge(Some.Treatment(Some.Heat(111)), withHole, Some.Site(), 2023, opening.AddDays(1));
        Assert.Equal(WindowState.Waiting, waiting.State);
        Assert.Contains("opens once a day with weather confirms it", waiting.Because.Sentence(ReadersUnits.Metric), StringComparison.Ordinal);
    }

    [Fact]
    public void A_season_that_could_not_be_judged_to_its_end_is_not_said_to_have_stayed_shut()
    {
        DailySeries full = Some.SmoothYears(2023, 1);
        var builder = new DailySeriesBuilder();
        for (int i = 0; i < full.Count; i++)
        {
            if (full.DayAt(i).Month == 3) continue;
            builder.Put(full.DayAt(i), WeatherVariable.MinimumAirC, full.MinimumAirC[i]);
            builder.Put(full.DayAt(i), WeatherVariable.MaximumAirC, full.MaximumAirC[i]);
        }

        Window window = Some.Judge(Some.Treatment(Some.Heat(111)), builder.Build()!, Some.Site(), 2023);
        Assert.True(window.CouldNotBeJudged);
        Assert.Contains("could not be judged", window.Because.Sentence(ReadersUnits.Metric), StringComparison.Ordinal);
        Assert.DoesNotContain("did not open", window.Because.Sentence(ReadersUnits.Metric), StringComparison.Ordinal);
    }

    private static DateOnly FirstFreeze(DailySeries series, int year)
    {
        int index = series.IndexOf(new DateOnly(year, 7, 24));
        while (series.MinimumAirC[index] > 0) index++;
        return series.DayAt(index);
    }
}
