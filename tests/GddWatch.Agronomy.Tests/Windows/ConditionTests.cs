using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;
using Xunit;

namespace GddWatch.Agronomy.Tests.Windows;

/// <summary>Each kind of condition on made-up weather, and what all of them have in common.</summary>
public sealed class ConditionTests
{
    private static readonly DateOnly First = new(2022, 1, 1);

    [Fact]
    public void An_air_temperature_band_is_met_inside_and_not_below_or_above_it()
    {
        AirTemperatureCondition mild = Air(above: 15, below: 29);
        Assert.Equal([Verdict.No, Verdict.Yes, Verdict.Yes, Verdict.No], Verdicts(mild, HighsOf(14.9, 15, 29, 29.1)));
    }

    [Fact]
    public void Once_met_a_band_is_kept_until_the_temperature_is_further_outside_than_it_lets_go_by()
    {
        AirTemperatureCondition mild = Air(above: 15, below: 29) with { LetsGoBy = TemperatureDifference.FromCelsius(2) };
        Assert.Equal([Verdict.No, Verdict.Yes, Verdict.Yes, Verdict.No, Verdict.No], Verdicts(mild, HighsOf(14, 16, 13.5, 12, 14)));
    }

    [Fact]
    public void A_held_band_counts_only_after_enough_days_so_that_one_day_is_not_enough()
    {
        AirTemperatureCondition held = Air(above: 15) with { Holding = new Holding(2, 3) };
        // On the first days it cannot be said yet what came before them.
        Assert.Equal([Verdict.Unknown, Verdict.Unknown, Verdict.No, Verdict.Yes, Verdict.No, Verdict.No], Verdicts(held, HighsOf(14, 16, 14, 16, 14, 14)));
    }

    [Fact]
    public void A_missing_day_that_could_decide_leaves_it_unknown()
    {
        Assert.Equal([Verdict.Unknown], Verdicts(Air(above: 15), HighsOf(double.NaN)));
    }

    [Fact]
    public void The_days_ahead_are_unknown_without_a_forecast_and_judged_by_it_where_there_is_one()
    {
        AirTemperatureCondition ahead = Air(below: 29) with { NextDays = 2 };
        DailySeries past = Series(HighsOf(20, 20));
        Assert.Equal(Verdict.Unknown, ahead.On(View(SiteMetrics.Of(past, Some.Site())), First.AddDays(1)));
        DailySeries forecast = Series(HighsOf(28, 31), First.AddDays(2));
        SeasonView hot = View(SiteMetrics.Of(past, Some.Site(), SiteJournal.Empty, forecast));
        Assert.Equal(Verdict.No, ahead.On(hot, First.AddDays(1)));
        Assert.Contains("31 °C", ahead.Why(hot, First.AddDays(1)).Sentence(ReadersUnits.Metric), StringComparison.Ordinal);
    }

    [Fact]
    public void Rain_of_the_last_days_is_summed_and_a_missing_day_is_not_a_dry_one()
    {
        var builder = new DailySeriesBuilder();
        double[] rain = [4, 7, double.NaN, 0, 0];
        for (int i = 0; i < rain.Length; i++)
        {
            builder.Put(First.AddDays(i), WeatherVariable.MinimumAirC, 5);
            builder.Put(First.AddDays(i), WeatherVariable.MaximumAirC, 15);
            if (!double.IsNaN(rain[i])) builder.Put(First.AddDays(i), WeatherVariable.PrecipitationMm, rain[i]);
        }

        var soaked = new RainCondition(2, false, WaterDepth.FromMillimetres(10), null);
        SeasonView view = View(SiteMetrics.Of(builder.Build()!, Some.Site()));
        Assert.Equal(
            [Verdict.Unknown, Verdict.Yes, Verdict.Unknown, Verdict.Unknown, Verdict.No], Enumerable.Range(0, 5).Select(i => soaked.On(view, First.AddDays(i))));
        Assert.Contains("11 mm", soaked.Why(view, First.AddDays(1)).Sentence(ReadersUnits.Metric), StringComparison.Ordinal);
        Assert.Equal(Verdict.Unknown, new RainCondition(2, true, null, WaterDepth.FromMillimetres(1)).On(view, First.AddDays(4)));
    }

    [Fact]
    public void A_dry_fortnight_after_rain_is_dry_whatever_the_rounding_of_its_sum()
    {
        var builder = new DailySeriesBuilder();
        for (int i = 0; i < 60; i++)
        {
            builder.Put(First.AddDays(i), WeatherVariable.MinimumAirC, 5);
            builder.Put(First.AddDays(i), WeatherVariable.MaximumAirC, 15);
            builder.Put(First.AddDays(i), WeatherVariable.PrecipitationMm, i < 30 ? 0.1 + i * 0.7 % 3 : 0);
        }

        SeasonView view = View(SiteMetrics.Of(builder.Build()!, Some.Site()));
        var dry = new RainCondition(14, false, null, WaterDepth.FromMillimetres(0));
        Assert.Equal(First.AddDays(43), Enumerable.Range(14, 46).Select(First.AddDays).First(day => dry.On(view, day) == Verdict.Yes));
        Assert.Equal(Verdict.Yes, dry.On(view, First.AddDays(59)));
    }

    [Fact]
    public void Rain_of_seven_days_that_adds_up_to_the_limit_is_enough()
    {
        var builder = new DailySeriesBuilder();
        for (int i = 0; i < 7; i++)
        {
            builder.Put(First.AddDays(i), WeatherVariable.MinimumAirC, 5);
            builder.Put(First.AddDays(i), WeatherVariable.MaximumAirC, 15);
            builder.Put(First.AddDays(i), WeatherVariable.PrecipitationMm, 0.7);
        }

        Assert.Equal(Verdict.Yes, new RainCondition(7, false, WaterDepth.FromMillimetres(4.9), null).On(View(SiteMetrics.Of(builder.Build()!, Some.Site())), First.AddDays(6)));
    }

    [Fact]
    public void Growth_is_measured_against_the_site_s_usual_yearly_peak_of_earlier_years()
    {
        // Common practice: growth of cool-season turf is strong in mid spring and in early autumn, and not in winter.
        var strong = new GrowthPotentialCondition(TurfType.CoolSeason, 14, Passing.RisesAbove, 0.85, new Holding(1, 1), OfPeak: double.NaN, Direction: GrowthDirection.RisingOrFlat);
        SiteMetrics metrics = SiteMetrics.Of(Some.SmoothYears(2010, 13), Some.Site());
        SeasonView view = View(metrics);
        DateOnly[] met = [.. Enumerable.Range(0, 360).Select(First.AddDays).Where(day => strong.On(view, day) == Verdict.Yes)];
        Assert.InRange(met[0], new DateOnly(2022, 5, 1), new DateOnly(2022, 6, 20));
        Assert.All(met, day => Assert.InRange(day.Month, 5, 9));
        Assert.Contains("median of 12 earlier years", strong.Why(view, met[0]).Sentence(ReadersUnits.Metric), StringComparison.Ordinal);
        SeasonView few = View(SiteMetrics.Of(Some.SmoothYears(2020, 3), Some.Site()));
        Assert.Equal(Verdict.Unknown, strong.On(few, met[0]));
        Assert.NotEqual(Verdict.Unknown, (strong with { OfPeak = 0.8 }).On(few, met[0]));
    }

    [Fact]
    public void How_fargrowth_usually_lasts_is_read_from_earlier_years_and_counts_down_to_its_fall()
    {
        var lasts = new DaysBeforeGrowthFalls(TurfType.WarmSeason, 0.5, 28, null);
        SeasonView view = View(SiteMetrics.Of(Some.SmoothYears(2010, 13), Some.Site()));
        DateOnly last = Enumerable.Range(180, 180).Select(First.AddDays).Last(day => lasts.On(view, day) == Verdict.Yes);
        Assert.InRange(last, new DateOnly(2022, 7, 15), new DateOnly(2022, 9, 1));
        Assert.Contains("28 days", lasts.Why(view, last).Sentence(ReadersUnits.Metric), StringComparison.Ordinal);
        Assert.Equal(Verdict.Unknown, lasts.On(View(SiteMetrics.Of(Some.SmoothYears(2020, 3), Some.Site())), last));
    }

    [Fact]
    public void At_most_so_many_days_before_growth_falls_is_the_other_side_of_at_least_so_many()
    {
        SeasonView view = View(SiteMetrics.Of(Some.SmoothYears(2010, 13), Some.Site()));
        var far = new DaysBeforeGrowthFalls(TurfType.WarmSeason, 0.5, 29, null);
        var near = new DaysBeforeGrowthFalls(TurfType.WarmSeason, 0.5, null, null, 28);
        Assert.All(Enumerable.Range(0, 365).Select(First.AddDays), day => Assert.NotEqual(far.On(view, day), near.On(view, day)));
        DateOnly first = Enumerable.Range(180, 180).Select(First.AddDays).First(day => near.On(view, day) == Verdict.Yes);
        Assert.Contains("28 days were left", near.Why(view, first).Sentence(ReadersUnits.Metric), StringComparison.Ordinal);
        Assert.Contains("at most 28 days", near.Explain(ReadersUnits.Metric), StringComparison.Ordinal);
    }

    [Fact]
    public void Growth_that_never_falls_so_far_leaves_more_days_than_any_limit_and_never_few()
    {
        // A climate without a season: 20 °C on every day.
        SeasonView view = View(SiteMetrics.Of(Some.SmoothYears(2010, 13, anomalyC: day => 20 - Some.SmoothMeanC(day)), Some.Site()));
        Assert.Equal(Verdict.Yes, new DaysBeforeGrowthFalls(TurfType.CoolSeason, 0.5, 28, null).On(view, First.AddDays(200)));
        Assert.Equal(Verdict.No, new DaysBeforeGrowthFalls(TurfType.CoolSeason, 0.5, null, null, 28).On(view, First.AddDays(200)));
    }

    [Fact]
    public void Without_a_record_a_condition_on_one_is_not_met_and_its_reason_says_that_it_is_unknown()
    {
        var since = new SinceTreatment("barrier", "Barrier", 42, 70, null, 200);
        SeasonView view = View(SiteMetrics.Of(Series(HighsOf(20, 20)), Some.Site()));
        Assert.Equal(Verdict.No, since.On(view, First));
        Assert.Contains("unknown", since.Why(view, First).Sentence(ReadersUnits.Metric), StringComparison.Ordinal);
    }

    [Fact]
    public void Days_since_a_record_count_from_it_with_both_ends()
    {
        var since = new SinceTreatment("barrier", "Barrier", 42, 70, null, 200);
        var done = new TreatmentDone { SiteId = "some-lawn", Treatment = "barrier", On = new(2022, 4, 1) };
        SeasonView view = View(SiteMetrics.Of(Some.SmoothYears(2022, 1), Some.Site(), new SiteJournal([done])));
        DateOnly[] met = [.. Enumerable.Range(0, 300).Select(First.AddDays).Where(day => since.On(view, day) == Verdict.Yes)];
        Assert.Equal((done.On.AddDays(42), done.On.AddDays(70)), (met[0], met[^1]));
    }

    // Science reference 3.7 (CALC): on the synthetic year, from day 100 the 200th °C-day of base 0 falls on day 117, counting the start day; here the day after the record is the first.
    [Fact]
    public void Heat_since_a_record_counts_from_the_day_after_it()
    {
        var since = new SinceTreatment("regulator", "Regulator", null, null, new HeatSince(DegreeDays.FromCelsiusDays(200), Temperature.FromCelsius(0), DegreeDayMethod.SimpleAverage), 200);
        var done = new TreatmentDone { SiteId = "some-lawn", Treatment = "regulator", On = First.AddDays(98) };
        SeasonView view = View(SiteMetrics.Of(Some.SmoothYears(2022, 1), Some.Site(), new SiteJournal([done])));
        Assert.Equal(117, Enumerable.Range(98, 60).Select(First.AddDays).First(day => since.On(view, day) == Verdict.Yes).DayOfYear);
    }

    [Fact]
    public void A_root_zone_without_a_known_soil_is_unknown_and_says_why()
    {
        var dry = new RootZoneDepletionCondition(TurfType.CoolSeason, Passing.RisesAbove, 1);
        SeasonView view = View(SiteMetrics.Of(Some.SmoothYears(2022, 1), Some.Site()));
        Assert.Equal(Verdict.Unknown, dry.On(view, new(2022, 7, 1)));
        Assert.Contains("texture is not configured", dry.Why(view, new(2022, 7, 1)).Sentence(ReadersUnits.Metric), StringComparison.Ordinal);
    }

    [Fact]
    public void Missing_water_can_be_given_as_a_depth_and_is_told_in_the_reader_s_units()
    {
        var dry = new RootZoneDepletionCondition(TurfType.CoolSeason, Passing.RisesAbove, null, WaterDepth.FromMillimetres(15));
        Site site = Some.Site() with { Soil = SoilTexture.Loam };
        SiteMetrics metrics = SiteMetrics.Of(DrySummer(), site);
        DateOnly[] met = [.. Enumerable.Range(0, 300).Select(First.AddDays).Where(day => dry.On(View(metrics), day) == Verdict.Yes)];
        Assert.NotEmpty(met);
        Assert.True(metrics.RootZoneAt(TurfType.CoolSeason, met[0]).DepletionMm >= 15 && metrics.RootZoneAt(TurfType.CoolSeason, met[0].AddDays(-1)).DepletionMm < 15);
        Assert.Contains("at least 0.59 inches", dry.Why(View(metrics), met[0]).Sentence(ReadersUnits.UnitedStates), StringComparison.Ordinal);
        // What may be missing needs a week of weather; a depth does not.
        Assert.DoesNotContain("NaN", dry.Why(View(metrics), First).Sentence(ReadersUnits.Metric), StringComparison.Ordinal);
    }

    [Fact]
    public void A_recorded_watering_refills_the_root_zone()
    {
        var dry = new RootZoneDepletionCondition(TurfType.CoolSeason, Passing.RisesAbove, 1);
        Site site = Some.Site() with { Soil = SoilTexture.Loam };
        DailySeries series = DrySummer();
        DateOnly due = Enumerable.Range(100, 200).Select(First.AddDays).First(day => dry.On(View(SiteMetrics.Of(series, site)), day) == Verdict.Yes);
        SiteMetrics watered = SiteMetrics.Of(series, site, SiteJournal.Empty, null, [due]);
        Assert.Equal(Verdict.No, dry.On(View(watered), due));
        Assert.Equal(Verdict.No, dry.On(View(watered), due.AddDays(2)));
    }

    [Fact]
    public void A_soil_threshold_with_a_let_go_does_not_flap_on_values_around_it()
    {
        SoilTemperatureCondition bare = Some.SoilRises(10) with { MeanOverDays = 1, Holding = new Holding(1, 1) };
        SoilTemperatureCondition kept = bare with { LetsGoAt = Temperature.FromCelsius(8) };
        Site measured = Some.Site() with { SoilTemperature = SoilSource.Measured };
        SeasonView view = View(SiteMetrics.Of(SoilOf(9, 10.5, 9.5, 10.2, 8.5, 7.9, 9.9), measured));
        int Changes(Condition condition) => Enumerable.Range(1, 6).Count(i => condition.On(view, First.AddDays(i)) != condition.On(view, First.AddDays(i - 1)));
        Assert.True(Changes(kept) == 2 && Changes(bare) == 4);
        Assert.Contains("has not gone back", kept.Why(view, First.AddDays(4)).Sentence(ReadersUnits.Metric), StringComparison.Ordinal);
    }

    [Fact]
    public void A_biofix_set_by_the_weather_starts_the_sum_there_and_reason_and_explanation_name_it()
    {
        var definition = new HeatSumDefinition(
            Temperature.FromCelsius(10), null, DegreeDayMethod.SimpleAverage, DegreeDayCutoff.None, AnnualDay.Of(1, 1), null, new BiofixCondition(7, Temperature.FromCelsius(10)));
        var reached = new HeatSumCondition(definition, DegreeDays.FromCelsiusDays(50));
        SeasonView view = View(SiteMetrics.Of(Some.SmoothYears(2021, 2), Some.Site()));
        DateOnly start = view.HeatSumStart(definition, new(2022, 7, 1));
        Assert.InRange(start.DayOfYear, 95, 110);
        Assert.Contains("counted once the 7-day mean of the air is at or above 10 °C", reached.Explain(ReadersUnits.Metric), StringComparison.Ordinal);
        Assert.Contains(Treatments.Wording.DayInYear(start), reached.Why(view, new(2022, 7, 1)).Sentence(ReadersUnits.Metric), StringComparison.Ordinal);
    }

    private static AirTemperatureCondition Air(double? above = null, double? below = null) => new(
        AirValue.Maximum, 1, above is { } low ? Temperature.FromCelsius(low) : null, below is { } high ? Temperature.FromCelsius(high) : null, new Holding(1, 1));

    private static double[] HighsOf(params double[] highs) => highs;

    private static Verdict[] Verdicts(Condition condition, double[] highs)
    {
        SeasonView view = View(SiteMetrics.Of(Series(highs), Some.Site()));
        return [.. Enumerable.Range(0, highs.Length).Select(i => condition.On(view, First.AddDays(i)))];
    }

    private static SeasonView View(SiteMetrics metrics) => new(metrics, new Season(2022, new DateSpan(First, new(2022, 12, 31))));

    private static DailySeries Series(double[] highs, DateOnly? first = null)
    {
        var builder = new DailySeriesBuilder();
        for (int i = 0; i < highs.Length; i++)
        {
            DateOnly day = (first ?? First).AddDays(i);
            builder.Put(day, WeatherVariable.PrecipitationMm, 0);
            builder.Put(day, WeatherVariable.MinimumAirC, -10);
            builder.Put(day, WeatherVariable.MaximumAirC, highs[i]);
        }

        return builder.Build()!;
    }

    private static DailySeries SoilOf(params double[] soil)
    {
        var builder = new DailySeriesBuilder();
        for (int i = 0; i < soil.Length; i++)
        {
            builder.Put(First.AddDays(i), WeatherVariable.MinimumAirC, 0);
            builder.Put(First.AddDays(i), WeatherVariable.MaximumAirC, 10);
            builder.Put(First.AddDays(i), WeatherVariable.Soil5CmC, soil[i]);
        }

        return builder.Build()!;
    }

    private static DailySeries DrySummer()
    {
        var builder = new DailySeriesBuilder();
        for (DateOnly day = First; day.Year == 2022; day = day.AddDays(1))
        {
            double mean = Some.SmoothMeanC(day);
            builder.Put(day, WeatherVariable.MinimumAirC, mean - 6);
            builder.Put(day, WeatherVariable.MaximumAirC, mean + 6);
            builder.Put(day, WeatherVariable.PrecipitationMm, day.Month < 5 ? 12 : 0);
        }

        return builder.Build()!;
    }
}
