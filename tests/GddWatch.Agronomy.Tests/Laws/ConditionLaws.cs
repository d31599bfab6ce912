using CsCheck;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Tests.Windows;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;
using Xunit;

namespace GddWatch.Agronomy.Tests.Laws;

/// <summary>What holds for every kind of condition over random weather.</summary>
public sealed class ConditionLaws
{
    private const string Seed = "0000KXKkWK54";

    private static readonly DateOnly First = new(2022, 3, 1);
    private static readonly Gen<double[]> Noise = Gen.Double[-5, 5].Array[900];

    [Fact]
    public void Every_condition_says_on_a_day_the_same_whether_later_days_are_known_or_not_and_explains_itself() =>
        Gen.Select(Noise, Gen.Int[430, 700]).Sample(
            (noise, cut) =>
            {
                DailySeries series = Weather(noise);
                DateOnly day = series.DayAt(cut);
                SeasonView whole = View(EveryCondition.Metrics(series, new(2022, 4, 10)));
                SeasonView then = View(EveryCondition.Metrics(series.Until(day)!, new(2022, 4, 10)));
                foreach (Condition condition in EveryCondition.Kinds.Where(condition => !LooksAhead(condition)))
                {
                    Assert.Equal(condition.On(whole, day), condition.On(then, day));
                    Assert.Equal(condition.Why(whole, day).Sentence(ReadersUnits.UnitedStates), condition.Why(then, day).Sentence(ReadersUnits.UnitedStates));
                    Assert.NotEmpty(condition.Explain(ReadersUnits.UnitedStates));
                }
            },
            iter: 15,
            seed: Seed);

    [Fact]
    public void Asked_of_many_days_at_once_a_condition_says_of_each_what_it_says_of_it_alone_with_no_later_day_known() =>
        Gen.Select(Noise, Gen.Int[0, 120], Gen.Int[1, 300]).Sample(
            (noise, start, days) =>
            {
                DailySeries series = Weather(noise);
                SeasonView whole = View(EveryCondition.Metrics(series, new(2022, 4, 10)));
                SeasonView[] cut = [.. Enumerable.Range(0, days).Select(i => View(EveryCondition.Metrics(series.Until(First.AddDays(start + i))!, new(2022, 4, 10))))];
                Condition[] simple = [.. EveryCondition.Kinds.Where(condition => !LooksAhead(condition))];
                foreach (Condition condition in (Condition[])[.. simple, new AllOf([simple[0], new Not(simple[1]), simple[2]]), new AnyOf([new Not(simple[0]), simple[3], new AllOf(simple)])])
                {
                    var verdicts = new Verdict[days];
                    condition.Judge(whole, First.AddDays(start), verdicts);
                    // Every tenth day: each cut record is gone through from its beginning.
                    for (int i = 0; i < days; i += 10) Assert.Equal(condition.On(cut[i], First.AddDays(start + i)), verdicts[i]);
                    for (int i = 0; i < days; i++) Assert.Equal(condition.On(whole, First.AddDays(start + i)), verdicts[i]);
                }
            },
            iter: 5,
            seed: Seed);

    [Fact]
    public void A_look_ahead_uses_the_forecast_of_its_day_and_is_unknown_on_a_day_without_one()
    {
        SeasonView view = View(EveryCondition.Metrics(2021, 2));
        foreach (Condition condition in EveryCondition.Kinds.Where(LooksAhead))
        {
            Assert.Equal(Verdict.Yes, condition.On(view, view.Metrics.Series.LastDay));
            Assert.Equal(Verdict.Unknown, condition.On(view, view.Metrics.Series.LastDay.AddDays(-1)));
        }
    }

    [Fact]
    public void Every_condition_of_the_list_is_met_on_some_day_and_not_on_another_so_that_these_laws_say_something()
    {
        SeasonView view = View(EveryCondition.Metrics(2010, 13));
        foreach (Condition condition in EveryCondition.Kinds.Where(condition => !LooksAhead(condition)))
        {
            HashSet<Verdict> found = [.. Enumerable.Range(0, 300).Select(i => condition.On(view, First.AddDays(i)))];
            Assert.True(found.IsSupersetOf([Verdict.Yes, Verdict.No]), condition.Explain(ReadersUnits.Metric));
        }
    }

    [Fact]
    public void Every_reason_has_a_sentence_without_a_broken_number_on_every_day_of_the_year()
    {
        foreach (SeasonView view in (ReadOnlySpan<SeasonView>)[View(EveryCondition.Metrics(2010, 13)), View(EveryCondition.Metrics(2022, 1))])
        {
            foreach (Condition condition in EveryCondition.Kinds)
            {
                for (DateOnly day = First; day.Year == 2022; day = day.AddDays(1))
                {
                    Because why = condition.Why(view, day);
                    string told = why.Sentence(ReadersUnits.UnitedStates) + string.Concat(why.Figures(ReadersUnits.UnitedStates));
                    Assert.EndsWith(".", why.Sentence(ReadersUnits.UnitedStates), StringComparison.Ordinal);
                    Assert.DoesNotContain("NaN", told, StringComparison.Ordinal);
                    Assert.DoesNotContain("∞", told, StringComparison.Ordinal);
                }
            }
        }
    }

    [Fact]
    public void Making_every_day_warmer_never_delays_what_only_asks_for_warmth() =>
        Gen.Select(Noise, Gen.Double[0.1, 4]).Sample(
            (noise, warmer) =>
            {
                Condition[] warmth =
                [
                    new AirTemperatureCondition(AirValue.Mean, 3, Temperature.FromCelsius(10), null, new Holding(2, 3), TemperatureDifference.FromCelsius(2)),
                    Some.SoilRises(10) with { LetsGoAt = Temperature.FromCelsius(8) },
                    Some.Heat(150),
                    new GrowthPotentialCondition(TurfType.WarmSeason, 7, Passing.RisesAbove, 0.2, new Holding(3, 5), LetsGoAt: 0.1),
                ];
                SeasonView cool = View(EveryCondition.Metrics(Weather(noise), new(2022, 4, 10)));
                SeasonView warm = View(EveryCondition.Metrics(Weather(noise, warmer), new(2022, 4, 10)));
                foreach (Condition condition in warmth)
                {
                    for (int i = 0; i < 300; i++) Assert.True(condition.On(warm, First.AddDays(i)) >= condition.On(cool, First.AddDays(i)), condition.Explain(ReadersUnits.Metric));
                }
            },
            iter: 15,
            seed: Seed);

    private static bool LooksAhead(Condition condition) => condition is AirTemperatureCondition { NextDays: not null } or RainCondition { IsAhead: true };

    private static DailySeries Weather(double[] noise, double warmer = 0)
    {
        double departure = 0;
        return EveryCondition.Weather(2021, 2, day => warmer + (departure = 0.7 * departure + noise[day.DayNumber % noise.Length]));
    }

    private static SeasonView View(SiteMetrics metrics) => new(metrics, new Season(2022, new DateSpan(First, new(2022, 12, 31))));
}
