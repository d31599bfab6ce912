using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;
using Xunit;

namespace GddWatch.Agronomy.Tests.Changes;

/// <summary>The window of a notice as a calendar entry: its days, and the number by which a later one takes the place of an earlier one.</summary>
public sealed class CalendarEntryTests
{
    private static readonly Treatment Task = Some.Treatment(Some.SoilRises(10), closing: Some.SoilRises(14.4), closed: Some.Heat(300));
    private static readonly DailySeries Weather = Some.SmoothYears(2010, 13);
    private static readonly Window Whole = Some.Judge(Task, Weather, Some.Site(), 2022);
    private static readonly DateOnly Opened = Whole.FirstOpening!.Day;
    private static readonly Recipient Adviser = new() { Address = "adviser@example.org" };
    private static readonly Recipient Late = new() { Address = "late@example.org", PausedUntil = Opened.AddDays(2) };
    private readonly Dictionary<(NoticeKey Key, string Address), Told> told = [];
    private readonly List<(NoticeKey Key, DateOnly Day)> all = [];

    [Fact]
    public void An_opening_is_entered_until_the_close_that_earlier_seasons_let_expect()
    {
        Notice notice = Assert.Single(Plan(Opened, Weather, [Adviser]));
        CalendarEntry entry = notice.Entry!;
        Assert.Equal(Opened, entry.First);
        // Each smooth year is the same but for leap days, so that the expected close is the coming one.
        Assert.InRange(entry.End, Whole.LastClosing!.Day.AddDays(-1), Whole.LastClosing.Day.AddDays(1));
        Assert.Contains("expected, not known", entry.EndWords, StringComparison.Ordinal);
        Assert.Contains(Wording.Day(entry.End), entry.EndWords, StringComparison.Ordinal);
        Assert.False(entry.IsWithdrawn);
    }

    [Fact]
    public void Where_too_few_seasons_are_known_three_weeks_are_entered_and_said_to_be_no_more_than_that()
    {
        DailySeries few = Some.SmoothYears(2020, 3);
        CalendarEntry entry = Assert.Single(Plan(Opened, few, [Adviser])).Entry!;
        Assert.Equal(entry.First.AddDays(21), entry.End);
        Assert.Contains("not known: 21 days are entered", entry.EndWords, StringComparison.Ordinal);
    }

    [Fact]
    public void A_window_without_a_known_end_never_ends_before_today_nor_after_its_season()
    {
        DailySeries few = Some.SmoothYears(2020, 3);
        Treatment endless = Task with { Closed = null, Closing = null };
        for (DateOnly day = Opened; day <= new DateOnly(2022, 7, 31); day = day.AddDays(9))
        {
            SiteMetrics metrics = SiteMetrics.Of(few.Until(day)!, Some.Site());
            Notice notice = Assert.Single(CalendarPlan.For(WindowJudge.Judge([endless], metrics, day), metrics, Some.Region(Some.Site())), each => each.Key.Season == 2022);
            Assert.InRange(notice.Entry!.End, day.AddDays(1), new DateOnly(2022, 8, 1));
        }
    }

    [Fact]
    public void A_close_ends_the_entry_on_its_day()
    {
        Plan(Opened, Weather, [Adviser]);
        Notice notice = Assert.Single(Plan(Whole.LastClosing!.Day, Weather, [Adviser]), each => each.Key.Kind == NoticeKind.Closed);
        Assert.Equal((Opened, Whole.LastClosing.Day), (notice.Entry!.First, notice.Entry.End));
        Assert.Equal($"It closed on {Wording.Day(Whole.LastClosing.Day)}.", notice.Entry.EndWords);
    }

    [Fact]
    public void An_opening_that_has_not_come_after_all_is_withdrawn_under_the_same_name_and_a_higher_number()
    {
        Notice first = Assert.Single(Plan(Opened, Weather, [Adviser]));
        DailySeries colder = Some.SmoothYears(2010, 13, anomalyC: day => day.Year == 2022 && day > Opened.AddDays(-40) ? -4 : 0);
        Notice correction = Assert.Single(Plan(Opened.AddDays(2), colder, [Adviser]));
        Assert.Equal(NoticeKind.Corrected, correction.Key.Kind);
        Assert.True(correction.Entry!.IsWithdrawn);
        Assert.Equal(Opened, correction.Entry.First);
        Assert.Equal(first.Key.WindowId(), correction.Key.WindowId());
        Assert.True(correction.Entry.Sequence > first.Entry!.Sequence);
    }

    [Fact]
    public void What_something_recorded_holds_is_withdrawn_and_stands_again_once_it_is_free()
    {
        Treatment task = Task with { Closing = null, Excludes = [new Exclusion("other", "Other", "One of the two.", "None is recorded.", new HoldRule(20))] };
        var other = new TreatmentDone { SiteId = "some-lawn", Treatment = "other", On = Opened.AddDays(5) };
        Recipient reader = Adviser with { Notices = [NoticeKind.Opened, NoticeKind.Held] };
        var heard = new List<Notice>();
        for (DateOnly day = Opened; day < Opened.AddDays(30); day = day.AddDays(1)) heard.AddRange(Plan(day, Weather, [reader], task, other));
        Assert.Equal([false, true, false], heard.Select(notice => notice.Entry!.IsWithdrawn));
        Assert.Equal([1, 2, 3], heard.Select(notice => notice.Entry!.Sequence));
        Assert.All(heard, notice => Assert.Equal(Opened, notice.Entry!.First));
    }

    [Fact]
    public void Whoever_reads_finds_a_higher_number_in_each_later_message_though_others_were_told_before()
    {
        DailySeries earlier = Some.SmoothYears(2010, 13, anomalyC: day => day.Year == 2022 && day > Opened.AddDays(-40) && day < Opened.AddDays(6) ? 1.5 : 0);
        var heard = new List<(string Address, int Sequence)>();
        for (DateOnly day = Opened; day <= new DateOnly(2022, 12, 31); day = day.AddDays(1))
        {
            // Three days in, it turns out that it opened earlier; the late reader hears first of the corrected opening.
            heard.AddRange(PlanFor(day, day < Opened.AddDays(3) ? Weather : earlier, [Adviser, Late]).SelectMany(planned => planned.Recipients.Select(reader => (reader.Address, planned.Notice.Entry!.Sequence))));
        }

        foreach (IGrouping<string, (string Address, int Sequence)> reader in heard.GroupBy(each => each.Address, StringComparer.Ordinal))
        {
            int[] numbers = [.. reader.Select(each => each.Sequence)];
            Assert.True(numbers.Length >= 3);
            Assert.Equal(numbers.Distinct().Order(), numbers);
        }
    }

    [Fact]
    public void The_calendar_of_all_windows_numbers_them_as_the_last_message_did()
    {
        Plan(Opened, Weather, [Adviser]);
        DateOnly day = Whole.PastBest!.Day;
        Notice closing = Assert.Single(Plan(day, Weather, [Adviser]));
        SiteMetrics metrics = SiteMetrics.Of(Weather.Until(day)!, Some.Site());
        var tellings = new Tellings(all, []);
        Notice[] calendar = [.. CalendarPlan.For(WindowJudge.Judge([Task], metrics, day), metrics, Some.Region(Some.Site(), Adviser)).Select(tellings.Numbered)];
        Notice now = Assert.Single(calendar, notice => notice.Key.Season == 2022);
        Assert.Equal(closing.Entry, now.Entry);
        Assert.Null(now.Chart);
        // The season before, which nobody was told of.
        Assert.Equal(0, Assert.Single(calendar, notice => notice.Key.Season == 2021).Entry!.Sequence);
    }

    [Fact]
    public void What_a_local_rule_bans_does_not_stand_in_the_calendar()
    {
        Treatment feeding = Task with { Work = WorkKind.Feeding };
        LocalRule rule = new(WorkKind.Feeding, Some.Day("01-01"), Some.Day("12-31"), null, "invented code", new(2021, 1, 1));
        SiteMetrics metrics = SiteMetrics.Of(Weather.Until(Opened)!, Some.Site());
        Standing standing = WindowJudge.Judge([feeding], metrics, Opened);
        Assert.Contains(CalendarPlan.For(standing, metrics, Some.Region(Some.Site())), notice => notice.Key.Season == 2022);
        Assert.DoesNotContain(CalendarPlan.For(standing, metrics, Some.Region(Some.Site()) with { Rules = [rule] }), notice => notice.Key.Season == 2022);
    }

    private IReadOnlyList<Notice> Plan(DateOnly day, DailySeries weather, Recipient[] readers, Treatment? task = null, params JournalEntry[] entries) =>
        [.. PlanFor(day, weather, readers, task, entries).Select(planned => planned.Notice)];

    /// <summary>Plans and numbers the notices of a day as a pass does, and remembers that they were told.</summary>
    private IReadOnlyList<PlannedNotice> PlanFor(DateOnly day, DailySeries weather, Recipient[] readers, Treatment? task = null, params JournalEntry[] entries)
    {
        SiteMetrics metrics = SiteMetrics.Of(weather.Until(day)!, Some.Site(), new SiteJournal(entries).Until(day));
        Standing standing = WindowJudge.Judge([task ?? Task], metrics, day);
        IReadOnlyList<PlannedNotice> planned = NoticePlan.For(standing, metrics, Some.Region(Some.Site(), readers), "c1", (key, address) => told.GetValueOrDefault((key, address)));
        var tellings = new Tellings(all, planned);
        foreach (PlannedNotice each in planned)
        {
            foreach (ToldFact fact in each.Notice.Facts)
            {
                all.Add((fact.Key, day));
                foreach (Recipient reader in each.Recipients) told[(fact.Key with { Revision = 0 }, reader.Address)] = new Told(day, fact.Day, "c1", fact.Key.Revision);
            }
        }

        return [.. planned.Select(each => each with { Notice = tellings.Numbered(each.Notice) })];
    }
}
