using CsCheck;
using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;
using Xunit;

namespace GddWatch.Agronomy.Tests.Windows;

/// <summary>A treatment that follows another six to ten weeks after its record (a split application: NC State Extension AG-763W, SEEN), when the other is recorded again.</summary>
public sealed class FollowUpTests
{
    private static readonly DailySeries Weather = Some.SmoothYears(2022, 1);
    private static readonly Treatment FollowUp = Some.Treatment(Since(42), Since(56), Since(70), from: "02-15", until: "10-31");

    [Fact]
    public void A_closed_follow_up_is_judged_anew_from_a_record_made_after_its_close()
    {
        Window window = Judge(FollowUp, new(2022, 10, 31), new(2022, 3, 1), new(2022, 6, 1));
        Assert.Equal(
            [
                (WindowState.Waiting, new(2022, 2, 15)), (WindowState.Open, new(2022, 4, 12)), (WindowState.Closing, new(2022, 4, 26)), (WindowState.Closed, new(2022, 5, 10)),
                (WindowState.Waiting, new(2022, 6, 1)), (WindowState.Open, new(2022, 7, 13)), (WindowState.Closing, new(2022, 7, 27)), (WindowState.Closed, new(2022, 8, 10)),
            ],
            window.Transitions.Select(change => (change.State, change.Day)));
        Assert.Equal(
            (new DateOnly(2022, 6, 1), new DateOnly(2022, 7, 13), new DateOnly(2022, 7, 27), new DateOnly(2022, 8, 10)),
            (window.BegunAnew!.Value, window.FirstOpening!.Day, window.PastBest!.Day, window.LastClosing!.Day));
    }

    [Fact]
    public void An_open_follow_up_waits_again_with_its_reason_when_a_newer_record_makes_it_unmet()
    {
        DateOnly[] records = [new(2022, 3, 1), new(2022, 4, 20)];
        Assert.Equal(WindowState.Open, Judge(FollowUp, new(2022, 4, 19), records).State);
        Window window = Judge(FollowUp, new(2022, 4, 20), records);
        Assert.Equal((WindowState.Waiting, new DateOnly(2022, 4, 20)), (window.State, window.Since));
        Assert.Null(window.FirstOpening);
        string reason = window.Because.Sentence(ReadersUnits.Metric);
        Assert.Contains("It begins anew with what was recorded for Wednesday 20 April 2022", reason, StringComparison.Ordinal);
        Assert.Contains("at least 42 days have passed since a recorded Barrier", reason, StringComparison.Ordinal);
        Assert.Equal((WindowState.Open, new DateOnly(2022, 6, 1)), (Judge(FollowUp, new(2022, 6, 5), records).State, Judge(FollowUp, new(2022, 6, 5), records).Since));
    }

    [Fact]
    public void One_past_its_best_begins_anew_and_one_that_is_open_and_stays_met_does_not()
    {
        Assert.Equal(WindowState.Waiting, Judge(FollowUp, new(2022, 5, 1), new(2022, 3, 1), new(2022, 4, 30)).State);
        Treatment soon = FollowUp with { Opens = new SinceTreatment("barrier", "Barrier", null, 10, null, 200), Closing = null, Closed = null };
        Window window = Judge(soon, new(2022, 3, 8), new(2022, 3, 1), new(2022, 3, 6));
        Assert.Equal((WindowState.Open, new DateOnly(2022, 3, 1)), (window.State, window.Since));
    }

    [Fact]
    public void What_closed_it_for_another_reason_that_still_holds_keeps_it_closed()
    {
        Treatment until = FollowUp with { Closed = new AnyOf([new CalendarGuard(Some.Day("05-15"), null), Since(70)]) };
        Assert.Equal(WindowState.Closed, Judge(until, new(2022, 7, 20), new(2022, 3, 1), new(2022, 6, 1)).State);
    }

    [Fact]
    public void A_record_that_is_only_one_way_of_opening_begins_nothing_anew()
    {
        Treatment either = FollowUp with { Opens = new AnyOf([Since(42), Some.SoilRises(5)]), Closing = null, Closed = null };
        Window window = Judge(either, new(2022, 5, 1), new DateOnly(2022, 4, 20));
        Assert.Equal(WindowState.Open, window.State);
        Assert.Null(window.BegunAnew);
    }

    [Fact]
    public void Without_a_newer_record_a_closed_one_stays_closed() =>
        Assert.Equal(WindowState.Closed, Judge(FollowUp, new(2022, 10, 1), new DateOnly(2022, 3, 1)).State);

    [Fact]
    public void What_is_recorded_later_changes_no_day_before() =>
        Gen.Int[0, 250].Array[1, 4].Sample(
            recorded =>
            {
                DateOnly[] records = [.. recorded.Order().Select(days => new DateOnly(2022, 2, 1).AddDays(days))];
                Window whole = Judge(FollowUp, new DateOnly(2022, 10, 31), records);
                for (DateOnly day = new(2022, 2, 15); day < new DateOnly(2022, 10, 31); day = day.AddDays(6))
                {
                    Assert.Equal(whole.Transitions.Last(change => change.Day <= day).State, Judge(FollowUp, day, [.. records.Where(record => record <= day)]).State);
                }
            },
            iter: 40,
            seed: "0000KXKkWK54");

    private static SinceTreatment Since(int days) => new("barrier", "Barrier", days, null, null, 200);

    private static Window Judge(Treatment treatment, DateOnly day, params DateOnly[] records)
    {
        var journal = new SiteJournal(records.Select(on => new TreatmentDone { SiteId = "some-lawn", Treatment = "barrier", On = on }));
        SiteMetrics metrics = SiteMetrics.Of(Weather.Until(day)!, Some.Site(), journal.Until(day));
        return WindowJudge.JudgeSeason(treatment, metrics, treatment.Season.BeginningIn(2022, Some.Site().Hemisphere), day);
    }
}
