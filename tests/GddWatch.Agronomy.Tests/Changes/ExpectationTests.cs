using GddWatch.Agronomy.Chances;
using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;
using Xunit;

namespace GddWatch.Agronomy.Tests.Changes;

public sealed class ExpectationTests
{
    private static readonly DailySeries Weather = Some.SmoothYears(2010, 14);

    [Fact]
    public void Where_the_usual_freeze_decides_the_close_its_dates_are_told_beforehand_and_come_true()
    {
        Treatment autumn = Some.Treatment(
            Some.SoilFalls(24), closing: Before(45), closed: Before(25), from: "08-10", until: "12-15");
        Window whole = Some.Judge(autumn, Weather, Some.Site(), 2023);
        DateOnly opened = whole.FirstOpening!.Day;
        DailySeries then = Weather.Until(opened)!;
        string words = new Expectation(Some.Judge(autumn, Weather, Some.Site(), 2023, opened), SiteMetrics.Of(then, Some.Site()), DaysAhead.Unknown, opened).InWords();
        Assert.Contains($"past its best from {Wording.Day(whole.PastBest!.Day)}", words, StringComparison.Ordinal);
        Assert.Contains($"closes on {Wording.Day(whole.LastClosing!.Day)}", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_warmth_decides_it_the_medians_of_at_least_ten_earlier_seasons_are_told()
    {
        Treatment spring = Some.Treatment(Some.SoilRises(10), closing: Some.SoilRises(14.4), closed: Some.Heat(300));
        Window whole = Some.Judge(spring, Weather, Some.Site(), 2023);
        DateOnly opened = whole.FirstOpening!.Day;
        string words = new Expectation(Some.Judge(spring, Weather, Some.Site(), 2023, opened), SiteMetrics.Of(Weather.Until(opened)!, Some.Site()), DaysAhead.Unknown, opened).InWords();
        // Each smooth year is the same to a day, so the median of the earlier ones is this one's own date.
        Assert.Contains("13 earlier seasons", words, StringComparison.Ordinal);
        DateOnly[] near = [.. Enumerable.Range(-1, 3).Select(whole.LastClosing!.Day.AddDays)];
        Assert.Contains(near, day => words.Contains($"{day:d MMMM yyyy}", StringComparison.Ordinal));
    }

    [Fact]
    public void With_fewer_earlier_seasons_it_says_that_it_cannot_be_said()
    {
        Treatment spring = Some.Treatment(Some.SoilRises(10), closed: Some.Heat(300));
        DailySeries few = Some.SmoothYears(2020, 4);
        Window whole = Some.Judge(spring, few, Some.Site(), 2023);
        string words = new Expectation(whole, SiteMetrics.Of(few, Some.Site()), DaysAhead.Unknown, whole.FirstOpening!.Day).InWords();
        Assert.Contains("3 earlier seasons are known here, and 10 are needed", words, StringComparison.Ordinal);
    }

    private static DaysBeforeFirstFreeze Before(int days) => new(days, 0.5, Temperature.FromCelsius(0), AnnualDay.Of(10, 15));
}
