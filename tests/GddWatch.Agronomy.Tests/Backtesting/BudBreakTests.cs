using GddWatch.Agronomy.Backtesting;
using GddWatch.Agronomy.Backtesting.Fitting;
using GddWatch.Agronomy.Backtesting.Rivals;
using GddWatch.Agronomy.Backtesting.Scores;
using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;
using Xunit;

namespace GddWatch.Agronomy.Tests.Backtesting;

/// <summary>
/// Real observed dates against the same place's weather: bud break at Harvard Forest (data sets HF003 and HF001). How far each species is off stands in DEVELOPERS.md, made by the same code.
/// </summary>
public sealed class BudBreakTests
{
    private static readonly Site Forest = Some.Site(latitude: 42.53);
    private static readonly SeasonRule Spring = new(AnnualDay.Of(1, 1), AnnualDay.Of(7, 31));

    private static readonly HeatSumDefinition FromNewYear =
        new(Temperature.FromCelsius(4), null, DegreeDayMethod.SingleSine, DegreeDayCutoff.None, AnnualDay.Of(1, 1));

    private static readonly Lazy<SiteMetrics> Metrics = new(() =>
    {
        var builder = new DailySeriesBuilder();
        foreach ((DateOnly day, double minimum, double maximum, double _) in HarvardForest.Days())
        {
            builder.Put(day, WeatherVariable.MinimumAirC, minimum);
            builder.Put(day, WeatherVariable.MaximumAirC, maximum);
        }

        return SiteMetrics.Of(builder.Build()!, Forest);
    });

    private static FitEvent[] Of(string species) => [.. HarvardForest.BudBreak()
        .Where(each => each.Species == species)
        .Select(each => new FitEvent(Forest.Id, Spring.BeginningIn(each.Year, Hemisphere.Northern), new DateOnly(each.Year, 1, 1).AddDays(each.DayOfYear - 1)))];

    /// <summary>Red maple, red oak, yellow birch and sugar maple, each with more than ten springs that the weather holds.</summary>
    [Theory]
    [InlineData("ACRU")]
    [InlineData("QURU")]
    [InlineData("BEAL")]
    [InlineData("ACSA")]
    public void A_fitted_heat_sum_foretells_springs_that_it_was_not_fitted_to_better_than_the_mean_date(string species)
    {
        DateFit fit = DateFitter.Fit(new HeatSumModel(FromNewYear), Of(species), new Dictionary<string, SiteMetrics> { [Forest.Id] = Metrics.Value }, new Random(1).Next).Fit!;
        Assert.InRange(fit.Years, 11, 14);
        Assert.True(
            fit.Best.YearLeftOutErrorDays < fit.MeanDate.YearLeftOutErrorDays,
            $"{species}: {fit.Best.YearLeftOutErrorDays:0.00} days against {fit.MeanDate.YearLeftOutErrorDays:0.00} by the mean date.");
        Assert.InRange(fit.Best.YearLeftOutErrorDays, 0.5, 5.0);
        Assert.True(fit.Best.FittedErrorDays <= fit.Best.YearLeftOutErrorDays + 0.2);
    }

    [Fact]
    public void A_window_by_the_fitted_sum_is_scored_beside_the_calendar_and_the_best_fixed_date()
    {
        FitEvent[] dates = Of("QURU");
        DateFit fit = DateFitter.Fit(new HeatSumModel(FromNewYear), dates, new Dictionary<string, SiteMetrics> { [Forest.Id] = Metrics.Value }, new Random(1).Next).Fit!;
        Treatment oak = Some.Treatment(fit.Model.ToCondition(fit.Best.GridValue, fit.Best.Threshold)) with { CompareWith = RivalRules.None with { Calendar = AnnualDay.Of(5, 10) } };
        Window[] windows = [.. Backtest.Seasons([oak], Metrics.Value)];
        var seen = new ObservedDates(dates.Select(each => new ObservedDate(Forest.Id, oak.Id, null, each.Day)));
        TreatmentComparison compared = TreatmentComparison.Of(oak, windows, new Dictionary<(string, int), DateOnly>(), seen);
        IReadOnlyList<DatePair> pairs = compared.Pairs(Rival.Window);
        DateScore window = DateScore.Of(pairs, 7, new Random(1).Next)!;
        DateScore fixedDate = DateScore.Of(compared.Pairs(Rival.BestFixedDate), 7, new Random(1).Next)!;
        // Judged day by day and scored, the windows are off by what the fit says of the springs that it was fitted to.
        Assert.Equal(fit.Best.FittedErrorDays, window.MeanAbsoluteErrorDays, 0.05);
        Assert.True(window.MeanAbsoluteErrorDays < fixedDate.MeanAbsoluteErrorDays);
        Assert.True(window.Hits > fixedDate.Hits);
        Assert.True(DateSkill.Of(pairs, compared.Pairs(Rival.Calendar), new Random(1).Next)!.Skill > 0);
    }
}
