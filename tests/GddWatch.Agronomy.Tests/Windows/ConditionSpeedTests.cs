using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Windows;
using Xunit;

namespace GddWatch.Agronomy.Tests.Windows;

/// <summary>A day is judged millions of times: many stations, many years, every treatment.</summary>
public sealed class ConditionSpeedTests
{
    [Fact]
    public void Judging_a_day_again_allocates_nothing_once_the_columns_are_there()
    {
        SeasonView view = new(EveryCondition.Metrics(2010, 13), new Season(2022, new DateSpan(new(2022, 1, 1), new(2022, 12, 31))));
        foreach (Condition condition in EveryCondition.Kinds)
        {
            Walk(condition, view);
            long before = GC.GetAllocatedBytesForCurrentThread();
            Walk(condition, view);
            long allocated = GC.GetAllocatedBytesForCurrentThread() - before;
            Assert.True(allocated == 0, $"{condition.Explain(ReadersUnits.Metric)}: {allocated} bytes a year");
        }
    }

    private static void Walk(Condition condition, SeasonView view)
    {
        for (DateOnly day = view.Season.Span.First; day <= view.Season.Span.Last; day = day.AddDays(1)) condition.On(view, day);
    }
}
