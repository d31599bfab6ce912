using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;
using Xunit;

namespace GddWatch.Agronomy.Tests.Windows;

/// <summary>What a site's memory keeps from one day to the next, and what it forgets.</summary>
public sealed class RememberedTests
{
    private static readonly DailySeries Years = Some.SmoothYears(2018, 4);

    [Fact]
    public void What_rests_on_days_that_are_the_same_is_kept_and_what_rests_on_later_ones_is_forgotten()
    {
        DateOnly changed = new(2020, 5, 1);
        SiteMemory memory = With(changed.AddDays(-1), changed, Years.LastDay);
        memory.GoOnTo(ChangedOn(changed), SiteJournal.Empty);
        Assert.Equal([true, false, false], Kept(memory, changed.AddDays(-1), changed, Years.LastDay));
    }

    [Fact]
    public void A_day_more_leaves_all_that_rests_on_days_before_it()
    {
        SiteMemory memory = new();
        memory.GoOnTo(Years.Until(Years.LastDay.AddDays(-1))!, SiteJournal.Empty);
        memory.LastFreezes.Keep((0, 1), 7, Years.LastDay.AddDays(-1));
        memory.LastFreezes.Keep((0, 2), 7, Years.LastDay);
        memory.GoOnTo(Years, SiteJournal.Empty);
        Assert.True(memory.LastFreezes.TryGet((0, 1), out _));
        Assert.False(memory.LastFreezes.TryGet((0, 2), out _));
    }

    [Fact]
    public void Another_journal_or_another_beginning_makes_it_forget_everything()
    {
        DateOnly day = new(2018, 2, 1);
        SiteMemory recorded = With(day);
        recorded.GoOnTo(Years, new SiteJournal([new TreatmentDone { SiteId = Some.Site().Id, On = new DateOnly(2021, 4, 1), Treatment = "overseeding" }]));
        Assert.Equal([false], Kept(recorded, day));
        SiteMemory shorter = With(day);
        shorter.GoOnTo(Years.From(day.AddDays(300)), SiteJournal.Empty);
        Assert.Equal([false], Kept(shorter, day));
        SiteMemory same = With(day);
        same.GoOnTo(Years, new SiteJournal([]));
        Assert.Equal([true], Kept(same, day));
    }

    private static SiteMemory With(params DateOnly[] through)
    {
        SiteMemory memory = new();
        memory.GoOnTo(Years, SiteJournal.Empty);
        foreach (DateOnly day in through) memory.FirstFreezes.Keep((0, day, day), 7, day);
        return memory;
    }

    private static bool[] Kept(SiteMemory memory, params DateOnly[] through) => [.. through.Select(day => memory.FirstFreezes.TryGet((0, day, day), out _))];

    private static DailySeries ChangedOn(DateOnly day)
    {
        double[] minimumC = Years.MinimumAirC.ToArray();
        minimumC[Years.IndexOf(day)] -= 0.1;
        return Years.WithAirTemperature(minimumC, Years.MaximumAirC.ToArray(), Years.MinimumMarks.ToArray(), Years.MaximumMarks.ToArray());
    }
}
