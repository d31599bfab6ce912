using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;
using Xunit;

namespace GddWatch.Agronomy.Tests.Changes;

/// <summary>What was told and turned out otherwise: one correction, no second opening, and nothing where no told fact changed.</summary>
public sealed class CorrectionTests
{
    private static readonly Treatment Task = Some.Treatment(Some.SoilRises(10), closing: Some.SoilRises(14.4), closed: Some.Heat(300));
    private static readonly Recipient Adviser = new() { Address = "adviser@example.org" };
    private static readonly DateOnly Opened = Some.Judge(Task, Some.SmoothYears(2010, 13), Some.Site(), 2022).FirstOpening!.Day;
    private readonly Dictionary<(NoticeKey Key, string Address), Told> told = [];

    [Fact]
    public void An_opening_that_later_turns_out_otherwise_gives_one_correction_and_no_second_opening()
    {
        List<Notice> notices = LiveThrough(day => day < Opened.AddDays(2) ? Weather() : Weather(colder: 4));
        Notice[] about = [.. notices.Where(notice => notice.Key.Kind is NoticeKind.Opened or NoticeKind.Corrected)];
        Assert.Equal([NoticeKind.Opened, NoticeKind.Corrected, NoticeKind.Corrected], about.Select(notice => notice.Key.Kind));
        Notice correction = about[1];
        Assert.Contains("is not open after all", correction.Headline, StringComparison.Ordinal);
        Assert.Contains($"you were told that it opened on {Wording.Day(Opened)}", correction.Reason, StringComparison.Ordinal);
        Assert.Contains(correction.Do, line => line.StartsWith("Wait", StringComparison.Ordinal));
        // Told again when it opens, as a correction of the correction.
        Assert.Contains("you were told that it had not opened", about[2].Reason, StringComparison.Ordinal);
        Assert.Contains("window opened on", about[2].Headline, StringComparison.Ordinal);
        Assert.Single(notices, notice => notice.Key.Kind == NoticeKind.Closed);
    }

    [Fact]
    public void An_opening_that_came_a_few_days_earlier_is_corrected_once_with_both_dates()
    {
        List<Notice> notices = LiveThrough(day => day < Opened.AddDays(3) ? Weather() : Weather(colder: -1.5));
        Notice correction = Assert.Single(notices, notice => notice.Key.Kind == NoticeKind.Corrected);
        Assert.Contains($", not on {Wording.DayInYear(Opened)}", correction.Headline, StringComparison.Ordinal);
        Assert.Contains("go by the dates above", correction.Do[0], StringComparison.Ordinal);
        Assert.Single(notices, notice => notice.Key.Kind == NoticeKind.Opened);
    }

    [Fact]
    public void A_corrected_day_that_changes_no_told_fact_sends_nothing()
    {
        List<Notice> notices = LiveThrough(day => day < Opened.AddDays(3) ? Weather() : Weather(oneDayWarmerC: 3));
        Assert.Equal([NoticeKind.Opened, NoticeKind.Closing, NoticeKind.Closed], notices.Select(notice => notice.Key.Kind));
    }

    [Fact]
    public void Who_does_not_want_corrections_gets_none_and_no_second_opening_either()
    {
        List<Notice> notices = LiveThrough(day => day < Opened.AddDays(2) ? Weather() : Weather(colder: 4), Adviser with { Notices = [NoticeKind.Opened] });
        Assert.Equal([NoticeKind.Opened], notices.Select(notice => notice.Key.Kind));
    }

    [Fact]
    public void What_was_told_under_another_configuration_is_not_corrected_by_the_weather()
    {
        Plan(Opened, Weather(), Adviser, "before");
        Assert.Empty(Plan(Opened.AddDays(2), Weather(colder: 4), Adviser, "after"));
    }

    [Fact]
    public void A_window_that_the_journal_says_is_done_is_not_told_of_any_more()
    {
        Assert.Single(Plan(Opened, Weather(), Adviser));
        var done = new TreatmentDone { SiteId = "some-lawn", Treatment = Task.Id, On = Opened.AddDays(1) };
        for (DateOnly day = Opened.AddDays(1); day <= new DateOnly(2022, 8, 10); day = day.AddDays(1)) Assert.Empty(Plan(day, Weather(), Adviser, entries: done));
    }

    [Fact]
    public void A_window_held_by_a_record_while_the_weather_has_it_open_is_told_once_to_who_asked_for_it()
    {
        Treatment task = Task with { Excludes = [new Exclusion("other", "Other", "One of the two.", "None is recorded.", new HoldRule(60))] };
        var other = new TreatmentDone { SiteId = "some-lawn", Treatment = "other", On = Opened.AddDays(-5) };
        Recipient reader = Adviser with { Notices = [NoticeKind.Held] };
        var heard = new List<Notice>();
        for (DateOnly day = Opened.AddDays(-5); day < Opened.AddDays(20); day = day.AddDays(1)) heard.AddRange(Plan(day, Weather(), reader, task: task, entries: other));
        Notice held = Assert.Single(heard);
        Assert.Equal(Opened, held.Day);
        Assert.Contains($"until {Wording.Day(Opened.AddDays(55))}", held.Headline, StringComparison.Ordinal);
        Assert.Contains("forbid each other", held.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_window_that_stands_open_again_after_it_was_done_or_held_is_told_again_and_says_why_it_is_free()
    {
        Treatment task = Task with { AgainAfterDays = 10, Closing = null, Excludes = [new Exclusion("other", "Other", "One of the two.", "None is recorded.", new HoldRule(20))] };
        var done = new TreatmentDone { SiteId = "some-lawn", Treatment = task.Id, On = Opened.AddDays(2) };
        var other = new TreatmentDone { SiteId = "some-lawn", Treatment = "other", On = Opened.AddDays(14) };
        Recipient reader = Adviser with { Notices = [NoticeKind.Opened, NoticeKind.Held] };
        var heard = new List<Notice>();
        for (DateOnly day = Opened; day < Opened.AddDays(37); day = day.AddDays(1)) heard.AddRange(Plan(day, Weather(), reader, task: task, entries: [done, other]));
        Assert.Equal([NoticeKind.Opened, NoticeKind.Opened, NoticeKind.Held, NoticeKind.Opened], heard.Select(notice => notice.Key.Kind));
        Assert.Equal([Opened, Opened.AddDays(12), Opened.AddDays(14), Opened.AddDays(34)], heard.Select(notice => notice.Day));
        Assert.Contains("no longer keeps it", heard[3].Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_rival_recorded_with_a_label_date_beyond_the_usual_interval_is_named_and_not_called_unknown()
    {
        Treatment task = Task with { Excludes = [new Exclusion("other", "Other", "One of the two.", "None is recorded.", new HoldRule(30, LabelDateDecides: true))] };
        var other = new TreatmentDone { SiteId = "some-lawn", Treatment = "other", On = Opened.AddDays(-90), NoSeedUntil = Opened };
        Notice notice = Assert.Single(Plan(Opened, Weather(), Adviser, task: task, entries: other));
        Assert.DoesNotContain(notice.Choices, line => line.StartsWith("Unknown", StringComparison.Ordinal));
        Assert.Contains(notice.Choices, line => line.Contains("Other is recorded for", StringComparison.Ordinal));
    }

    [Fact]
    public void A_notice_that_would_fall_into_a_local_ban_waits_until_the_ban_is_over()
    {
        Treatment feeding = Task with { Work = WorkKind.Feeding };
        DateOnly banEnds = Opened.AddDays(4);
        LocalRule rule = new(WorkKind.Feeding, Quantities.AnnualDay.Of(11, 15), Quantities.AnnualDay.Of(banEnds), null, "invented code", new(2021, 1, 1));
        Assert.Empty(Plan(Opened, Weather(), Adviser, task: feeding, rule: rule));
        Assert.Empty(Plan(banEnds, Weather(), Adviser, task: feeding, rule: rule));
        Notice after = Assert.Single(Plan(banEnds.AddDays(1), Weather(), Adviser, task: feeding, rule: rule));
        Assert.DoesNotContain(after.Cautions, caution => caution.Contains("not checked", StringComparison.Ordinal));
    }

    [Fact]
    public void Where_no_rule_is_configured_advice_to_feed_says_that_local_rules_were_not_checked()
    {
        Notice feeding = Assert.Single(Plan(Opened, Weather(), Adviser, task: Task with { Work = WorkKind.Feeding }));
        Assert.Contains("Local rules on feeding were not checked", feeding.Cautions[0], StringComparison.Ordinal);
        told.Clear();
        Assert.DoesNotContain(Assert.Single(Plan(Opened, Weather(), Adviser)).Cautions, caution => caution.Contains("not checked", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_two_open_rivals_each_notice_names_the_choice_and_a_preference_settles_it()
    {
        Treatment one = Task with { Id = "one", Name = "One", Excludes = [new Exclusion("two", "Two", "One or two.", "No two is recorded.", new HoldRule(60))] };
        Treatment two = Task with { Id = "two", Name = "Two", Excludes = [new Exclusion("one", "One", "One or two.", "No one is recorded.", new HoldRule(60))] };
        IReadOnlyList<Notice> both = PlanBoth(Some.Site());
        Assert.Equal(2, both.Count);
        Assert.All(both, notice => Assert.Contains("One or two.", notice.Choices));
        Assert.All(both, notice => Assert.Contains(notice.Choices, line => line.StartsWith("Unknown: No", StringComparison.Ordinal)));
        Assert.All(both, notice => Assert.Contains(notice.Choices, line => line.StartsWith("Both are open here now", StringComparison.Ordinal)));
        Notice preferred = Assert.Single(PlanBoth(Some.Site() with { Prefers = ["two"] }));
        Assert.Equal("Two", preferred.TreatmentName);
        Assert.Contains("This site prefers Two over One.", preferred.Choices);

        IReadOnlyList<Notice> PlanBoth(Site site)
        {
            SiteMetrics metrics = SiteMetrics.Of(Weather().Until(Opened)!, site);
            return [.. NoticePlan.For(WindowJudge.Judge([one, two], metrics, Opened), metrics, Some.Region(site, Adviser), "c1", (_, _) => null).Select(planned => planned.Notice)];
        }
    }

    private static DailySeries Weather(double colder = 0, double oneDayWarmerC = 0) => Some.SmoothYears(2010, 13, anomalyC: day =>
        day.Year == 2022 && day > Opened.AddDays(-40) && day < Opened.AddDays(3) ? -colder : day == Opened.AddDays(-80) ? oneDayWarmerC : 0);

    private List<Notice> LiveThrough(Func<DateOnly, DailySeries> weatherAsKnownOn, Recipient? reader = null)
    {
        var notices = new List<Notice>();
        for (var day = new DateOnly(2022, 1, 1); day <= new DateOnly(2022, 12, 31); day = day.AddDays(1))
        {
            notices.AddRange(Plan(day, weatherAsKnownOn(day), reader ?? Adviser));
        }

        return notices;
    }

    private IReadOnlyList<Notice> Plan(
        DateOnly day, DailySeries weather, Recipient reader, string configuration = "c1", Treatment? task = null, LocalRule? rule = null, params JournalEntry[] entries)
    {
        SiteMetrics metrics = SiteMetrics.Of(weather.Until(day)!, Some.Site(), new SiteJournal(entries).Until(day));
        Region region = Some.Region(Some.Site(), reader) with { Rules = rule is null ? [] : [rule] };
        Standing standing = WindowJudge.Judge([task ?? Task], metrics, day);
        IReadOnlyList<PlannedNotice> planned = NoticePlan.For(standing, metrics, region, configuration, (key, address) => told.GetValueOrDefault((key, address)));
        foreach (ToldFact fact in planned.SelectMany(each => each.Notice.Facts))
        {
            told[(fact.Key with { Revision = 0 }, reader.Address)] = new Told(day, fact.Day, configuration, fact.Key.Revision);
        }

        return [.. planned.Select(each => each.Notice)];
    }
}
