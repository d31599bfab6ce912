using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;
using Xunit;

namespace GddWatch.Agronomy.Tests.Windows;

public sealed class DaysAfterLastFreezeTests
{
    private static readonly DaysAfterLastFreeze TwoWeeksAfter = new(14, 0.5, Temperature.FromCelsius(0), null);

    [Fact]
    public void It_is_met_from_so_many_days_after_the_median_of_earlier_winters_on()
    {
        // Ten winters; the median is day 105 of the year, 15 April.
        SeasonView view = View(LastFreezesOn(100, 101, 102, 103, 105, 105, 107, 108, 109, 110));
        Assert.Equal(new DateOnly(2022, 4, 29), FirstMet(TwoWeeksAfter, view));
        string why = TwoWeeksAfter.Why(view, new(2022, 4, 29)).Sentence(ReadersUnits.Metric);
        Assert.Contains("14 days past the usual last freeze on Friday 15 April 2022 (median of 10 earlier winters)", why, StringComparison.Ordinal);
        Assert.Equal(new DateOnly(2022, 4, 29), TwoWeeksAfter.KnownDay(view)!.Value.Day);
    }

    // Science reference 3.9 (CALC): where 8 winters of 10 have a freeze, the date after which one comes with a chance of 10 % is that of F = 0.875.
    [Fact]
    public void Winters_without_a_freeze_count_so_that_the_date_is_the_published_mixed_quantile()
    {
        int?[] days = [90, 92, 94, 96, 98, 100, 102, 104, null, null];
        UsualDate usual = View(LastFreezesOn(days)).UsualLastFreeze(TwoWeeksAfter with { Chance = 0.9 });
        // Type 8 of 8 values at 0.875: h = (8 + 1/3)·0.875 + 1/3 = 7.625, that is 102 + 0.625·2 = 103.25.
        Assert.Equal(103, usual.Day!.Value.DayOfYear);
        Assert.Equal("90 % date of 10 earlier winters", usual.Source);
    }

    [Fact]
    public void Where_a_freeze_is_not_usual_no_day_has_to_be_waited_for()
    {
        SeasonView view = View(LastFreezesOn(null, null, null, null, null, null, null, 40, 41, 42));
        Assert.Equal(Verdict.Yes, TwoWeeksAfter.On(view, new(2022, 1, 1)));
        Assert.Contains("3 of 10 earlier winters", TwoWeeksAfter.Why(view, new(2022, 1, 1)).Sentence(ReadersUnits.Metric), StringComparison.Ordinal);
    }

    [Fact]
    public void With_fewer_than_ten_winters_the_fallback_stands_and_is_named_and_without_one_it_is_unknown()
    {
        SeasonView view = View(LastFreezesOn([.. Enumerable.Repeat((int?)100, 9)]));
        Assert.Equal(Verdict.Unknown, TwoWeeksAfter.On(view, new(2022, 6, 1)));
        DaysAfterLastFreeze stated = TwoWeeksAfter with { Fallback = AnnualDay.Of(5, 1) };
        Assert.Equal(new DateOnly(2022, 5, 15), FirstMet(stated, view));
        Because why = stated.Why(view, new(2022, 5, 15));
        Assert.True(why.RestsOnFallback);
        Assert.Contains("only 9 earlier seasons", why.Sentence(ReadersUnits.Metric), StringComparison.Ordinal);
    }

    [Fact]
    public void The_season_s_own_winter_decides_nothing()
    {
        // Half of the winters early and half late, so that one more on either side would move the median.
        int?[] earlier = [90, 90, 90, 90, 90, 110, 110, 110, 110, 110];
        UsualDate asBefore = View(LastFreezesOn([.. earlier, 80])).UsualLastFreeze(TwoWeeksAfter);
        UsualDate late = View(LastFreezesOn([.. earlier, 150])).UsualLastFreeze(TwoWeeksAfter);
        Assert.Equal(100, late.Day!.Value.DayOfYear);
        Assert.Equal(asBefore, late);
    }

    [Fact]
    public void Ten_days_without_weather_before_the_freeze_spoil_a_winter()
    {
        SeasonView view = View(LastFreezesOn([.. Enumerable.Repeat((int?)100, 10)], missing: day => day.Year == 2015 && day.Month == 5 && day.Day <= 20));
        Assert.Equal(Verdict.Unknown, TwoWeeksAfter.On(view, new(2022, 6, 1)));
    }

    [Fact]
    public void In_the_south_it_comes_half_a_year_later()
    {
        SiteMetrics north = SiteMetrics.Of(Some.SmoothYears(2008, 15, -4), Some.Site(41));
        SiteMetrics south = SiteMetrics.Of(Some.SmoothYears(2008, 15, -4, AnnualDay.HalfYearDays), Some.Site(-41));
        DateOnly spring = new SeasonView(north, new Season(2022, new DateSpan(new(2022, 1, 1), new(2022, 7, 31)))).UsualLastFreeze(TwoWeeksAfter).Day!.Value;
        DateOnly southern = new SeasonView(south, new Season(2022, new DateSpan(new(2022, 7, 1), new(2023, 1, 28)))).UsualLastFreeze(TwoWeeksAfter).Day!.Value;
        // Common practice: a freeze ends in spring.
        Assert.InRange(spring, new DateOnly(2022, 3, 1), new DateOnly(2022, 5, 31));
        Assert.InRange(southern.DayNumber - spring.DayNumber, 180, 182);
    }

    [Fact]
    public void A_season_of_autumn_looks_back_at_the_spring_before_it_and_one_across_the_winter_ahead_at_the_next()
    {
        SiteMetrics metrics = LastFreezesOn([.. Enumerable.Repeat((int?)105, 11)]);
        Assert.Equal(new DateOnly(2022, 4, 15), new SeasonView(metrics, new Season(2022, new DateSpan(new(2022, 8, 10), new(2022, 12, 15)))).UsualLastFreeze(TwoWeeksAfter).Day);
        Assert.Equal(new DateOnly(2023, 4, 15), new SeasonView(metrics, new Season(2022, new DateSpan(new(2022, 10, 1), new(2023, 5, 31)))).UsualLastFreeze(TwoWeeksAfter).Day);
    }

    private static DateOnly FirstMet(Condition condition, SeasonView view) =>
        Enumerable.Range(0, 212).Select(new DateOnly(2022, 1, 1).AddDays).First(day => condition.On(view, day) == Verdict.Yes);

    private static SeasonView View(SiteMetrics metrics) => new(metrics, new Season(2022, new DateSpan(new(2022, 1, 1), new(2022, 7, 31))));

    private static SiteMetrics LastFreezesOn(params int?[] days) => LastFreezesOn(days, _ => false);

    /// <summary>Years from midsummer to midsummer, the first ending in 2012, each with its only freeze on a day of the calendar year, or with none.</summary>
    private static SiteMetrics LastFreezesOn(int?[] days, Func<DateOnly, bool> missing)
    {
        var builder = new DailySeriesBuilder();
        for (var day = new DateOnly(2011, 7, 24); day <= new DateOnly(2011 + days.Length, 7, 31); day = day.AddDays(1))
        {
            builder.Put(day, WeatherVariable.PrecipitationMm, 0);
            if (missing(day)) continue;
            int winter = (day.Month > 7 || (day.Month == 7 && day.Day >= 24) ? day.Year + 1 : day.Year) - 2012;
            bool freezes = winter < days.Length && day.Year == winter + 2012 && day.DayOfYear == days[winter];
            builder.Put(day, WeatherVariable.MinimumAirC, freezes ? -1 : 5);
            builder.Put(day, WeatherVariable.MaximumAirC, 15);
        }

        return SiteMetrics.Of(builder.Build()!, Some.Site());
    }
}
