using GddWatch.Agronomy.Backtesting;
using GddWatch.Agronomy.Backtesting.Rivals;
using GddWatch.Agronomy.Backtesting.Scores;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;
using Xunit;

namespace GddWatch.Agronomy.Tests.Backtesting;

public sealed class RivalTests
{
    private static readonly Treatment Task = Some.Treatment(Some.SoilRises(10)) with
    {
        CompareWith = new RivalRules(AnnualDay.Of(4, 15), "", null, [new SeenEvent("first-crabgrass", 14)]),
    };

    private static Season Year(int year, Hemisphere hemisphere = Hemisphere.Northern) => Task.Season.BeginningIn(year, hemisphere);

    [Fact]
    public void The_calendar_date_moves_by_half_a_year_in_the_south()
    {
        Assert.Equal(new DateOnly(2021, 4, 15), RivalDates.Calendar(Task, Year(2021), Hemisphere.Northern));
        Assert.Equal(new DateOnly(2021, 4, 15).AddDays(181), RivalDates.Calendar(Task, Year(2021, Hemisphere.Southern), Hemisphere.Southern));
    }

    [Fact]
    public void The_best_fixed_date_is_the_median_of_the_other_years_at_the_site()
    {
        var known = new BestFixedDates([("a", 2001, 90), ("a", 2002, 100), ("a", 2003, 104), ("a", 2004, 140), ("b", 2001, 10)]);
        // Without 2004: 90, 100, 104. Without 2001: 100, 104, 140.
        Assert.Equal(Year(2004).Span.First.AddDays(100), known.For("a", Year(2004)));
        Assert.Equal(Year(2001).Span.First.AddDays(104), known.For("a", Year(2001)));
        // One other year of its own is too few: all sites' other years decide, 2001 left out at both.
        Assert.Equal(Year(2001).Span.First.AddDays(104), known.For("b", Year(2001)));
        Assert.Null(new BestFixedDates([("a", 2001, 90)]).For("a", Year(2001)));
    }

    [Fact]
    public void The_rule_of_thumb_takes_the_air_where_the_opening_takes_the_soil()
    {
        RunningMeanRule rule = RivalDates.RunningMeanOf(Task)!;
        Assert.Equal((5, Passing.RisesAbove, 10.0), (rule.MeanOverDays, rule.Passing, rule.Threshold.Celsius));
        Assert.Null(RivalDates.RunningMeanOf(Some.Treatment(Some.Heat(100))));
        var metrics = SiteMetrics.Of(Some.SmoothYears(2020, 2), Some.Site());
        DateOnly first = RivalDates.RunningMean(rule, metrics, Year(2021))!.Value;
        double MeanOf(DateOnly day) => Enumerable.Range(0, 5).Average(back => Some.SmoothMeanC(day.AddDays(-back)));
        Assert.True(MeanOf(first) >= 10 && MeanOf(first.AddDays(-1)) < 10);
    }

    [Fact]
    public void What_was_seen_stands_beside_the_window_that_should_have_opened_before_it()
    {
        Site site = Some.Site();
        DailySeries years = Some.SmoothYears(2015, 6, anomalyC: day => 2 * Math.Sin(day.Year));
        Window[] windows = [.. Backtest.Seasons([Task], SiteMetrics.Of(years, site))];
        DateOnly opening = windows[0].FirstOpening!.Day;
        var seen = new ObservedDates([
            new ObservedDate(site.Id, "first-crabgrass", null, opening.AddDays(16)),
            new ObservedDate(site.Id, "first-crabgrass", 2016, null),
            new ObservedDate("elsewhere", "first-crabgrass", null, opening)]);
        TreatmentComparison compared = TreatmentComparison.Of(Task, windows, new Dictionary<(string, int), DateOnly>(), seen);
        DatePair[] pairs = [.. compared.Pairs(Rival.Window)];
        // Two weeks before what was seen it should have opened; it did so two days before that.
        Assert.Equal([-2, null], pairs.Select(pair => pair.ErrorDays));
        Assert.Equal(1, DateScore.Of(pairs, 7, new Random(1).Next)!.FalseOpenings);
        Assert.Equal(opening.AddDays(2), compared.Seasons[0].Seen);
    }

    [Fact]
    public void An_opened_window_counts_its_days_without_those_on_which_it_waited()
    {
        Treatment pausing = Some.Treatment(
            Some.Heat(50),
            closed: Some.Heat(300)) with { Paused = new AirTemperatureCondition(AirValue.Mean, 1, Temperature.FromCelsius(23), null, new Holding(1, 1)) };
        DailySeries years = Some.SmoothYears(2020, 1, anomalyC: day => day == new DateOnly(2020, 5, 20) || day == new DateOnly(2020, 5, 21) ? 8 : 0);
        var dates = new SeasonDates(Some.Judge(pausing, years, Some.Site(), 2020));
        Assert.Equal(1, dates.Window.Reopenings);
        Assert.Equal(dates.Closes!.Value.DayNumber - dates.Opens!.Value.DayNumber - 2, dates.DaysOpen);
        Assert.False(dates.IsOpenOn(new DateOnly(2020, 5, 20)));
        Assert.True(dates.IsOpenOn(new DateOnly(2020, 5, 22)));
    }
}
