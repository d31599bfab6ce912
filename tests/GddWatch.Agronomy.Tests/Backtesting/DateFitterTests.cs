using GddWatch.Agronomy.Backtesting;
using GddWatch.Agronomy.Backtesting.Fitting;
using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;
using Xunit;

namespace GddWatch.Agronomy.Tests.Backtesting;

/// <summary>Constants that dates were made with are found again.</summary>
public sealed class DateFitterTests
{
    private static readonly SeasonRule Spring = new(AnnualDay.Of(1, 1), AnnualDay.Of(7, 31));
    private static readonly Site Here = Some.Site();

    private static readonly HeatSumDefinition FromNewYear =
        new(Temperature.FromCelsius(10), null, DegreeDayMethod.SingleSine, DegreeDayCutoff.None, AnnualDay.Of(1, 1));

    // Springs that differ, each in its own way: early warmth and late warmth do not go together.
    private static readonly DailySeries Years = Some.SmoothYears(2001, 16, anomalyC: day =>
        4 * Math.Sin(day.Year * 2.4) * Math.Cos(day.DayOfYear / 30.0) + 3 * Math.Cos(day.Year * 1.7) + 2 * Math.Sin(day.DayNumber * 0.9));

    private static readonly Dictionary<string, SiteMetrics> Metrics = new() { [Here.Id] = SiteMetrics.Of(Years, Here) };

    private static FitEvent[] DatesOf(Condition condition) => [.. Enumerable.Range(2001, 16).Select(year =>
    {
        Season season = Spring.BeginningIn(year, Hemisphere.Northern);
        DateOnly day = Some.Judge(Some.Treatment(condition), Years, Here, year).FirstOpening!.Day;
        return new FitEvent(Here.Id, season, day);
    })];

    [Fact]
    public void Base_and_heat_that_dates_were_made_with_are_found_again()
    {
        FitEvent[] dates = DatesOf(new HeatSumCondition(FromNewYear with { Base = Temperature.FromCelsius(4) }, DegreeDays.FromCelsiusDays(180)));
        DateFit fit = DateFitter.Fit(new HeatSumModel(FromNewYear), dates, Metrics, new Random(1).Next).Fit!;
        Assert.Equal(4.0, fit.Best.GridValue, 0.5);
        Assert.Equal(180, fit.Best.Threshold, 20.0);
        Assert.Equal(0, fit.Best.FittedErrorDays, 0.3);
        Assert.InRange(fit.Best.YearLeftOutErrorDays, 0, 0.7);
        Assert.InRange(fit.Best.GridInterval!.Value.Low, 2, 4);
        Assert.InRange(fit.Best.GridInterval!.Value.High, 4, 6);
        Assert.True(fit.Flat.LowestGridValue <= 4 && fit.Flat.HighestGridValue >= 4);
        Assert.True(fit.MeanDate.YearLeftOutErrorDays > 3);
        Assert.True(fit.NearerThanMeanDate!.Value.Low > 0);
        // The published criteria find it too, but for the least deviation in heat, which runs away by its nature.
        FittedDates[] published = [.. fit.ByCriterion.Where(each => each.Criterion is FitCriterion.LeastCoefficientOfVariation or FitCriterion.LeastDeviationInDays)];
        Assert.All(published, each => Assert.Equal(4.0, each.GridValue, 1.5));
    }

    [Fact]
    public void Threshold_and_days_of_a_running_mean_are_found_again_falling_ones_too()
    {
        var rises = new AirTemperatureCondition(AirValue.Mean, 7, Temperature.FromCelsius(12), null, new Holding(2, 3));
        DateFit fit = DateFitter.Fit(new RunningMeanModel(null, AirValue.Mean, Passing.RisesAbove, new Holding(2, 3)), DatesOf(rises), Metrics, new Random(1).Next).Fit!;
        Assert.Equal(0, fit.Best.FittedErrorDays, 0.3);
        Assert.Equal(12, fit.Best.Threshold, 1.0);
        Assert.Equal(rises.MeanOverDays, fit.Best.GridValue, 3.0);
        Assert.Single(fit.ByCriterion);
        Assert.Null(fit.ClosedForm);

        var autumn = new SeasonRule(AnnualDay.Of(8, 1), AnnualDay.Of(11, 30));
        var falls = new AirTemperatureCondition(AirValue.Mean, 5, null, Temperature.FromCelsius(14), new Holding(1, 1));
        FitEvent[] dates = [.. Enumerable.Range(2001, 16).Select(year => new FitEvent(
            Here.Id,
            autumn.BeginningIn(year, Hemisphere.Northern),
            Some.Judge(Some.Treatment(falls, from: "08-01", until: "11-30"), Years, Here, year).FirstOpening!.Day))];
        DateFit autumnFit = DateFitter.Fit(new RunningMeanModel(null, AirValue.Mean, Passing.FallsBelow, new Holding(1, 1)), dates, Metrics, new Random(1).Next).Fit!;
        Assert.Equal(0, autumnFit.Best.FittedErrorDays, 0.3);
        Assert.Equal(14, autumnFit.Best.Threshold, 0.75);
    }

    [Fact]
    public void Too_few_years_are_refused_and_holes_do_not_count()
    {
        FitEvent[] dates = DatesOf(new HeatSumCondition(FromNewYear, DegreeDays.FromCelsiusDays(100)));
        (DateFit? fit, IReadOnlyList<FitEvent> usable) = DateFitter.Fit(new HeatSumModel(FromNewYear), dates[..5], Metrics, new Random(1).Next);
        Assert.Null(fit);
        Assert.Equal(5, usable.Count);
        FitEvent outside = new(Here.Id, Spring.BeginningIn(2030, Hemisphere.Northern), new DateOnly(2030, 5, 1));
        Assert.Equal(6, DateFitter.Fit(new HeatSumModel(FromNewYear), [.. dates[..6], outside], Metrics, new Random(1).Next).Fit!.Events.Count);
    }

    [Fact]
    public void A_site_left_out_is_foretold_by_the_others()
    {
        Site there = Here with { Id = "other-lawn" };
        DailySeries warmer = Some.SmoothYears(2001, 16, offsetC: 2, anomalyC: day => 3 * Math.Cos(day.Year * 1.7) + 2 * Math.Sin(day.DayNumber * 0.9));
        var metrics = new Dictionary<string, SiteMetrics>(Metrics) { [there.Id] = SiteMetrics.Of(warmer, there) };
        var condition = new HeatSumCondition(FromNewYear with { Base = Temperature.FromCelsius(5) }, DegreeDays.FromCelsiusDays(150));
        FitEvent[] there16 = [.. Enumerable.Range(2001, 16).Select(year => new FitEvent(
            there.Id, Spring.BeginningIn(year, Hemisphere.Northern), Some.Judge(Some.Treatment(condition), warmer, there, year).FirstOpening!.Day))];
        DateFit fit = DateFitter.Fit(new HeatSumModel(FromNewYear), [.. DatesOf(condition), .. there16], metrics, new Random(1).Next).Fit!;
        Assert.Equal((2, 16), (fit.Sites, fit.Years));
        Assert.InRange(fit.Best.SiteLeftOutErrorDays!.Value, 0, 1.5);
        // The warmer site's mean date says little of the colder one.
        Assert.True(fit.MeanDate.SiteLeftOutErrorDays > 5);
    }
}
