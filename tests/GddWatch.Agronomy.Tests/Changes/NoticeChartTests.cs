using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;
using Xunit;

namespace GddWatch.Agronomy.Tests.Changes;

/// <summary>The data of a notice's chart.</summary>
public sealed class NoticeChartTests
{
    private static readonly Treatment Task = Some.Treatment(Some.SoilRises(10), closed: Some.Heat(300));
    private static readonly Recipient Adviser = new() { Address = "adviser@example.org" };

    // Twelve years of which each is warmer than the one before by its own amount, so that the quantiles tell them apart.
    private static readonly DailySeries Weather = Some.SmoothYears(2010, 13, anomalyC: day => (day.Year - 2010) * 0.3);
    private static readonly DateOnly Opened = Some.Judge(Task, Weather, Some.Site(), 2022).FirstOpening!.Day;

    [Fact]
    public void It_shows_what_opened_the_window_with_its_limit_this_year_so_far_and_the_range_of_earlier_years_beyond_today()
    {
        NoticeChart chart = ChartOn(Opened, Weather);
        ChartPanel panel = Assert.Single(chart.Panels);
        Assert.Equal("Soil at 2 inches, 5-day mean [°F]", panel.Title);
        Assert.Equal([50.0], panel.Limits);
        Assert.Equal((Opened.AddDays(-70), Opened), (chart.FirstDay, chart.Today));
        Assert.Equal(92, panel.Curve.Now.Count);
        Assert.Equal(92, panel.Curve.Low.Count);
        Assert.All(panel.Curve.Now.Take(71), value => Assert.NotNull(value));
        Assert.All(panel.Curve.Now.Skip(71), Assert.Null);
        SiteMetrics metrics = SiteMetrics.Of(Weather.Until(Opened)!, Some.Site());
        Assert.Equal(Temperature.FromCelsius(metrics.SoilMeanAt(Depth.FromCentimetres(5), 5, Opened)).Fahrenheit, panel.Curve.Now[70]!.Value, 0.01);
    }

    /// <summary>Against the published formula: Hyndman &amp; Fan 1996, Am. Stat. 50:361-365, type 8: the value at n·p + (p + 1)/3 of the ordered ones (SEEN).</summary>
    [Fact]
    public void The_range_is_the_middle_eight_tenths_of_the_same_day_in_earlier_years_by_the_published_quantile()
    {
        ChartCurve curve = ChartOn(Opened, Weather).Panels[0].Curve;
        SiteMetrics metrics = SiteMetrics.Of(Weather.Until(Opened)!, Some.Site());
        foreach (int index in (int[])[0, 35, 70, 91])
        {
            DateOnly day = Opened.AddDays(index - 70);
            double[] earlier = [.. Enumerable.Range(2010, 12).Select(year => metrics.SoilMeanAt(Depth.FromCentimetres(5), 5, AnnualDay.Of(day).In(year))).Where(double.IsFinite).Order()];
            Assert.InRange(earlier.Length, 10, 12);
            Assert.Equal(Temperature.FromCelsius(TypeEight(earlier, 0.1)).Fahrenheit, curve.Low[index], 0.01);
            Assert.Equal(Temperature.FromCelsius(TypeEight(earlier, 0.9)).Fahrenheit, curve.High[index], 0.01);
        }

        static double TypeEight(double[] ordered, double share)
        {
            double place = ordered.Length * share + (share + 1) / 3;
            int below = (int)Math.Floor(place);
            return ordered[below - 1] + (place - below) * (ordered[below] - ordered[below - 1]);
        }
    }

    [Fact]
    public void Its_words_say_the_same_value_limit_and_usual_range_with_units_and_weekday()
    {
        NoticeChart chart = ChartOn(Opened, Weather);
        ChartCurve curve = chart.Panels[0].Curve;
        Assert.StartsWith("5-day mean soil temperature at 2 inches (estimated): ", chart.Words, StringComparison.Ordinal);
        Assert.Contains($"{curve.Now[70]:0.0} °F on {Wording.Day(Opened)}", chart.Words, StringComparison.Ordinal);
        Assert.Contains("looked for is at or above 50 °F", chart.Words, StringComparison.Ordinal);
        Assert.Contains($"usual at this date are {curve.Low[70]:0} to {curve.High[70]:0} °F in eight of ten earlier years.", chart.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void With_fewer_than_ten_earlier_years_no_range_is_drawn_and_the_words_say_so()
    {
        DailySeries few = Some.SmoothYears(2013, 9 + 1, anomalyC: _ => 3);
        NoticeChart chart = ChartOn(Some.Judge(Task, few, Some.Site(), 2022).FirstOpening!.Day, few);
        Assert.Empty(chart.Panels[0].Curve.Low);
        Assert.Empty(chart.Panels[0].Curve.High);
        Assert.Contains("fewer than 10 earlier years are known, so no usual range is shown", chart.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_close_by_heat_shows_the_heat_that_closed_it()
    {
        DateOnly closed = Some.Judge(Task, Weather, Some.Site(), 2022).LastClosing!.Day;
        ChartPanel panel = Assert.Single(ChartOn(closed, Weather, NoticeKind.Closed).Panels);
        Assert.Equal("Heat of the air, base 50 °F [°F-days]", panel.Title);
        Assert.Equal([540.0], panel.Limits);
        Assert.True(panel.Curve.Now[70] >= 540 && panel.Curve.Now[69] < 540);
    }

    [Fact]
    public void Two_measures_are_two_panels_soil_first_and_two_limits_of_one_measure_share_a_panel()
    {
        Treatment task = Task with { Opens = new AllOf([Some.Heat(20), Some.SoilRises(10), Some.SoilRises(9)]) };
        DateOnly opened = Some.Judge(task, Weather, Some.Site(), 2022).FirstOpening!.Day;
        NoticeChart chart = ChartOn(opened, Weather, task: task);
        Assert.Equal(["Soil at 2 inches, 5-day mean [°F]", "Heat of the air, base 50 °F [°F-days]"], chart.Panels.Select(panel => panel.Title));
        Assert.Equal([50.0, 48.2], chart.Panels[0].Limits);
        Assert.Contains("at or above 50 °F or at or above 48.2 °F", chart.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Growth_and_air_are_drawn_too_and_a_date_alone_is_not()
    {
        Treatment air = Task with { Opens = new AirTemperatureCondition(AirValue.Maximum, 10, Temperature.FromCelsius(20), null, new Holding(1, 1)) };
        Treatment growth = Task with { Opens = new GrowthPotentialCondition(TurfType.CoolSeason, 14, Passing.RisesAbove, 0.5, new Holding(1, 1)) };
        Treatment date = Task with { Opens = new CalendarGuard(Some.Day("04-01"), null) };
        Assert.Equal("Air, daily high, 10-day mean [°F]", ChartOn(OpeningOf(air), Weather, task: air).Panels[0].Title);
        ChartPanel panel = ChartOn(OpeningOf(growth), Weather, task: growth).Panels[0];
        Assert.Equal("Growth potential, 14-day mean [%]", panel.Title);
        Assert.Equal([50.0], panel.Limits);
        Assert.Null(NoticeOn(OpeningOf(date), Weather, NoticeKind.Opened, date, ReadersUnits.UnitedStates).Chart);
    }

    [Fact]
    public void Metric_readers_see_metric_axes()
    {
        ChartPanel panel = NoticeOn(Opened, Weather, NoticeKind.Opened, Task, ReadersUnits.Metric).Chart!.Panels[0];
        Assert.Equal("Soil at 5 cm, 5-day mean [°C]", panel.Title);
        Assert.Equal([10.0], panel.Limits);
    }

    private static DateOnly OpeningOf(Treatment task) => Some.Judge(task, Weather, Some.Site(), 2022).FirstOpening!.Day;

    private static NoticeChart ChartOn(DateOnly day, DailySeries weather, NoticeKind kind = NoticeKind.Opened, Treatment? task = null) =>
        NoticeOn(day, weather, kind, task ?? Task, ReadersUnits.UnitedStates).Chart!;

    private static Notice NoticeOn(DateOnly day, DailySeries weather, NoticeKind kind, Treatment task, ReadersUnits units)
    {
        SiteMetrics metrics = SiteMetrics.Of(weather.Until(day)!, Some.Site());
        Region region = Some.Region(Some.Site(), Adviser with { Notices = [kind] }) with { Units = units };
        return Assert.Single(NoticePlan.For(WindowJudge.Judge([task], metrics, day), metrics, region, "c1", (_, _) => null)).Notice;
    }
}
