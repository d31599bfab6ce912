using CsCheck;
using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;
using Xunit;

namespace GddWatch.Agronomy.Tests.Windows;

/// <summary>What the journal makes of windows: done, held, free again. The smooth year opens the seeding window in late August.</summary>
public sealed class RecordedTests
{
    private static readonly Exclusion ByBarrier = new("barrier", "Barrier", "One of the two.", "No barrier is recorded here.", new HoldRule(365, LabelDateDecides: true));
    private static readonly Exclusion BySeeding = new("seeding", "Seeding", "One of the two.", "No seeding is recorded here.", new HoldRule(120, Mowings: 3));
    private static readonly Treatment Seeding = Some.Treatment(Some.SoilFalls(22), from: "08-10", until: "12-15") with { Id = "seeding", Name = "Seeding", Excludes = [ByBarrier] };
    private static readonly Treatment Barrier = Some.Treatment(Some.SoilFalls(22), from: "08-10", until: "12-15") with { Id = "barrier", Name = "Barrier", Excludes = [BySeeding] };
    private static readonly DailySeries Weather = Some.SmoothYears(2010, 14);

    [Fact]
    public void A_recorded_treatment_turns_its_window_to_done_from_that_day_on_and_to_the_end_of_its_season()
    {
        DateOnly opened = Judge(Seeding, new(2022, 12, 15)).FirstOpening!.Day;
        DateOnly done = opened.AddDays(4);
        Assert.Equal(WindowState.Open, Judge(Seeding, done.AddDays(-1), Done("seeding", done)).State);
        Window after = Judge(Seeding, done, Done("seeding", done));
        Assert.Equal((WindowState.Done, done), (after.State, after.Since));
        Assert.Contains($"recorded as done on {Wording.Day(done)}", after.Because.Sentence(ReadersUnits.Metric), StringComparison.Ordinal);
        Assert.Equal(WindowState.Done, Judge(Seeding, new(2022, 12, 20), Done("seeding", done)).State);
    }

    [Fact]
    public void A_treatment_recorded_shortly_before_its_season_counts_for_it_and_one_of_last_year_does_not()
    {
        Assert.Equal(WindowState.Done, Judge(Seeding, new(2022, 9, 1), Done("seeding", new(2022, 8, 1))).State);
        Assert.NotEqual(WindowState.Done, Judge(Seeding, new(2022, 9, 1), Done("seeding", new(2021, 9, 10))).State);
    }

    [Fact]
    public void A_recorded_barrier_holds_seeding_until_the_date_of_its_label_and_frees_it_on_that_day()
    {
        DateOnly opened = Judge(Seeding, new(2022, 12, 15)).FirstOpening!.Day;
        DateOnly free = opened.AddDays(20);
        TreatmentDone barrier = Done("barrier", new(2022, 4, 10)) with { NoSeedUntil = free };
        Window held = Judge(Seeding, free.AddDays(-1), barrier);
        Assert.Equal(WindowState.Held, held.State);
        Assert.Equal(free, Assert.Single(held.Holds).FreeFrom);
        Assert.Contains($"free from {Wording.Day(free)} on, the date from the product's label", held.Because.Sentence(ReadersUnits.Metric), StringComparison.Ordinal);
        Window freed = Judge(Seeding, free, barrier);
        Assert.Equal((WindowState.Open, free), (freed.State, freed.Since));
        Assert.Equal(opened, freed.FirstOpening!.Day);
    }

    [Fact]
    public void Without_the_label_s_date_the_longest_usual_interval_holds_and_the_reason_says_that_the_label_decides()
    {
        Window held = Judge(Seeding, new(2022, 9, 15), Done("barrier", new(2022, 4, 10)));
        Assert.Equal(WindowState.Held, held.State);
        Assert.Equal(new DateOnly(2023, 4, 10), Assert.Single(held.Holds).FreeFrom);
        Assert.Contains("the label decides", held.Because.Sentence(ReadersUnits.Metric), StringComparison.Ordinal);
    }

    [Fact]
    public void Recorded_seedlings_hold_the_barrier_until_three_mowings_are_recorded_after_them()
    {
        DateOnly seeded = new(2022, 9, 1);
        JournalEntry[] entries = [Done("seeding", seeded), .. new[] { 20, 27, 34 }.Select(days => new Mowing { SiteId = "some-lawn", On = seeded.AddDays(days) })];
        Window held = Judge(Barrier, seeded.AddDays(33), entries);
        Assert.Equal(WindowState.Held, held.State);
        Assert.Contains("(2 so far)", held.Because.Sentence(ReadersUnits.Metric), StringComparison.Ordinal);
        Assert.Equal(WindowState.Open, Judge(Barrier, seeded.AddDays(34), entries).State);
    }

    [Fact]
    public void Two_open_rivals_of_which_nothing_is_recorded_both_stay_open()
    {
        DateOnly day = Judge(Seeding, new(2022, 12, 15)).FirstOpening!.Day.AddDays(3);
        SiteMetrics metrics = SiteMetrics.Of(Weather.Until(day)!, Some.Site());
        Assert.All(WindowJudge.Judge([Seeding, Barrier], metrics, day).Windows, window => Assert.Equal(WindowState.Open, window.State));
    }

    [Fact]
    public void A_treatment_that_may_be_done_again_rests_and_then_stands_where_the_weather_has_it()
    {
        Treatment again = Seeding with { AgainAfterDays = 14 };
        DateOnly done = Judge(Seeding, new(2022, 12, 15)).FirstOpening!.Day.AddDays(2);
        Assert.Equal(WindowState.Done, Judge(again, done.AddDays(13), Done("seeding", done)).State);
        Window rested = Judge(again, done.AddDays(14), Done("seeding", done));
        Assert.Equal((WindowState.Open, done.AddDays(14)), (rested.State, rested.Since));
    }

    [Fact]
    public void What_is_recorded_holds_and_is_done_even_where_there_is_no_weather()
    {
        var journal = new SiteJournal([Done("barrier", new(2022, 8, 20))]);
        Standing standing = WindowJudge.JudgeWithoutWeather([Seeding, Barrier], Some.Site(), journal, new(2022, 9, 1), "There is no weather.");
        Assert.Equal([WindowState.Held, WindowState.Done], standing.Windows.Select(window => window.State));
    }

    [Fact]
    public void While_it_is_paused_an_open_window_waits_and_then_stands_open_again()
    {
        Treatment mild = Some.Treatment(Some.SoilRises(10), closed: new CalendarGuard(Some.Day("05-28"), null)) with { Paused = Some.SoilRises(20) };
        var hot = new DateOnly(2023, 4, 25);
        DailySeries series = Some.SmoothYears(2022, 2, anomalyC: day => day >= hot && day < hot.AddDays(8) ? 14 : 0);
        Window window = Some.Judge(mild, series, Some.Site(), 2023);
        Assert.Equal(
            [WindowState.Waiting, WindowState.Open, WindowState.Waiting, WindowState.Open, WindowState.Closed], window.Transitions.Select(transition => transition.State));
        Assert.Equal(1, window.Reopenings);
        Assert.Contains("It waits for now", window.Transitions[2].Because.Sentence(ReadersUnits.Metric), StringComparison.Ordinal);
    }

    [Fact]
    public void No_window_is_ever_open_while_something_recorded_holds_it_and_what_is_recorded_later_changes_nothing_before() =>
        Gen.Select(Gen.Int[0, 400].Array[0, 3], Gen.Int[0, 400].Array[0, 3], Gen.Int[0, 400].Array[0, 5], Gen.Int[30, 200]).Sample(
            (barriers, seedings, mowings, label) =>
            {
                DateOnly start = new(2022, 1, 1);
                JournalEntry[] entries =
                [
                    .. barriers.Select((days, i) => Done("barrier", start.AddDays(days)) with { NoSeedUntil = i == 0 ? start.AddDays(days + label) : null }),
                    .. seedings.Select(days => Done("seeding", start.AddDays(days))),
                    .. mowings.Select(days => new Mowing { SiteId = "some-lawn", On = start.AddDays(days) }),
                ];
                foreach (Treatment treatment in (ReadOnlySpan<Treatment>)[Seeding, Barrier])
                {
                    Window whole = Judge(treatment, new(2022, 12, 15), entries);
                    for (DateOnly day = new(2022, 8, 10); day <= new DateOnly(2022, 12, 15); day = day.AddDays(9))
                    {
                        Window then = Judge(treatment, day, entries);
                        bool held = Hold.On(treatment, new SiteJournal(entries).Until(day), day).Count > 0;
                        Assert.False(held && then.IsOpen);
                        Assert.Equal(whole.Transitions.Last(transition => transition.Day <= day).State, then.State);
                    }
                }
            },
            iter: 40,
            seed: "0000KXKkWK54");

    private static TreatmentDone Done(string treatment, DateOnly on) => new() { SiteId = "some-lawn", Treatment = treatment, On = on };

    private static Window Judge(Treatment treatment, DateOnly day, params JournalEntry[] entries)
    {
        SiteMetrics metrics = SiteMetrics.Of(Weather.Until(day)!, Some.Site(), new SiteJournal(entries).Until(day));
        return WindowJudge.JudgeSeason(treatment, metrics, treatment.Season.BeginningIn(2022, Some.Site().Hemisphere), day);
    }
}
