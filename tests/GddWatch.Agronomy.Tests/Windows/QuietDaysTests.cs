using CsCheck;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;
using Xunit;

namespace GddWatch.Agronomy.Tests.Windows;

/// <summary>Days on which nothing happens are gone past: that must change nothing.</summary>
public sealed class QuietDaysTests
{
    private static readonly SiteMetrics Metrics = EveryCondition.Metrics(WithHoles(EveryCondition.Weather(2005, 13, day => 5 * Math.Sin(day.DayNumber / 3.1))), new DateOnly(2017, 4, 10));

    private static readonly Gen<Condition> Conditions = Gen.Int[0, EveryCondition.Kinds.Length - 1].Select(kind => EveryCondition.Kinds[kind]);

    [Fact]
    public void Going_past_quiet_days_gives_the_same_changes_and_the_same_reason_as_looking_at_each()
    {
        int gonePast = 0, changes = 0;
        Gen.Select(Conditions, Conditions.Null(), Conditions.Null(), Conditions.Null(), Gen.Int[2005, 2017], Gen.Int[0, 353]).Sample(
            (opens, closing, closed, paused, year, daysIn) =>
            {
                Treatment task = Some.Treatment(opens, closing, closed, "01-01", "12-20") with { Paused = paused };
                Season season = task.Season.BeginningIn(year, Metrics.Site.Hemisphere);
                DateOnly today = season.Span.First.AddDays(daysIn);
                WindowJudge.Course each = Of(task, season, today), past = Of(task, season, today);
                int looks = 0;
                for (DateOnly day = season.Span.First; day <= today; day = day.AddDays(1)) each.Step(day);
                for (DateOnly day = season.Span.First; day <= today; day = past.NextAfter(day), looks++) past.Step(day);
                if (daysIn % 2 == 0)
                {
                    each.SettleAsOf(season.Span.Last, today);
                    past.SettleAsOf(season.Span.Last, today);
                }

                Window expected = each.ToWindow(), window = past.ToWindow();
                Assert.Equal(Said(expected), Said(window));
                gonePast += daysIn + 1 - looks;
                changes += window.Course.Count;
            },
            iter: 400, threads: 1);
        Assert.True(gonePast > 10_000 && changes > 500, $"{gonePast} days were gone past, with {changes} changes.");
    }

    private static WindowJudge.Course Of(Treatment task, Season season, DateOnly today) => new(task, new SeasonView(Metrics, season), season.Span.First, today);

    private static string[] Said(Window window) => [.. window.Course.Select(change => $"{change.Day} {change.State} {change.Because.Sentence(ReadersUnits.Metric)}"), window.Because.Sentence(ReadersUnits.Metric)];

    private static DailySeries WithHoles(DailySeries weather)
    {
        var builder = new DailySeriesBuilder();
        for (int i = 0; i < weather.Count; i++)
        {
            DateOnly day = weather.DayAt(i);
            builder.Add(new DailyRecord { Day = day });
            foreach (WeatherVariable variable in Enum.GetValues<WeatherVariable>())
            {
                bool isHole = day.DayNumber % 97 < 4 || (day.Year == 2011 && day.Month is 5 or 6);
                if (weather.Has(variable) && !isHole) builder.Put(day, variable, weather.Column(variable)[i]);
            }
        }

        return builder.Build()!;
    }
}
