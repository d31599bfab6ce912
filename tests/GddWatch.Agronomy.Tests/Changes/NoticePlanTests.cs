using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;
using Xunit;

namespace GddWatch.Agronomy.Tests.Changes;

public sealed class NoticePlanTests
{
    private static readonly Treatment Task = Some.Treatment(Some.SoilRises(10), closing: Some.SoilRises(14.4), closed: Some.Heat(300));
    private static readonly DailySeries Weather = Some.SmoothYears(2010, 14);
    private static readonly Recipient Adviser = new() { Address = "adviser@example.org", Name = "The adviser" };
    private readonly Dictionary<(NoticeKey Key, string Address), Told> told = [];

    [Fact]
    public void A_season_lived_day_by_day_tells_each_change_once()
    {
        var changes = new List<(NoticeKind Kind, DateOnly Day)>();
        for (var day = new DateOnly(2022, 1, 1); day <= new DateOnly(2022, 12, 31); day = day.AddDays(1))
        {
            changes.AddRange(PlanAndTell(day, Adviser).Select(planned => (planned.Notice.Key.Kind, day)));
        }

        Assert.Equal([NoticeKind.Opened, NoticeKind.Closing, NoticeKind.Closed], changes.Select(each => each.Kind));
        Window whole = Some.Judge(Task, Weather, Some.Site(), 2022);
        Assert.Equal([whole.FirstOpening!.Day, whole.PastBest!.Day, whole.LastClosing!.Day], changes.Select(each => each.Day));
    }

    [Fact]
    public void A_window_found_open_at_the_first_start_gives_one_notice_that_says_since_when()
    {
        Window whole = Some.Judge(Task, Weather, Some.Site(), 2022);
        DateOnly late = whole.FirstOpening!.Day.AddDays(5);
        PlannedNotice planned = Assert.Single(PlanAndTell(late, Adviser));
        Assert.True(planned.Notice.FoundSo);
        Assert.Contains($"Some Lawn: Some task window open since {Wording.Day(whole.FirstOpening.Day)}", planned.Notice.Headline, StringComparison.Ordinal);
        Assert.Empty(PlanAndTell(late.AddDays(1), Adviser));
    }

    [Fact]
    public void A_window_found_closed_at_the_first_start_is_silent()
    {
        Assert.Empty(PlanAndTell(new DateOnly(2022, 9, 1), Adviser));
    }

    [Fact]
    public void A_window_found_past_its_best_gives_one_notice_and_not_two()
    {
        Window whole = Some.Judge(Task, Weather, Some.Site(), 2022);
        DateOnly late = whole.PastBest!.Day.AddDays(2);
        PlannedNotice planned = Assert.Single(PlanAndTell(late, Adviser));
        Assert.Equal(NoticeKind.Opened, planned.Notice.Key.Kind);
        Assert.Contains("past its best since", planned.Notice.Headline, StringComparison.Ordinal);
        Assert.Empty(PlanAndTell(late.AddDays(1), Adviser));
    }

    [Fact]
    public void After_days_of_downtime_only_the_present_state_is_told()
    {
        Window whole = Some.Judge(Task, Weather, Some.Site(), 2022);
        Assert.Single(PlanAndTell(whole.FirstOpening!.Day, Adviser));
        PlannedNotice planned = Assert.Single(PlanAndTell(whole.LastClosing!.Day.AddDays(10), Adviser));
        Assert.Equal(NoticeKind.Closed, planned.Notice.Key.Kind);
    }

    [Fact]
    public void A_new_recipient_hears_of_what_is_open_and_the_old_one_hears_nothing_again()
    {
        Window whole = Some.Judge(Task, Weather, Some.Site(), 2022);
        Assert.Single(PlanAndTell(whole.FirstOpening!.Day, Adviser));
        var partner = new Recipient { Address = "partner@example.org" };
        PlannedNotice planned = Assert.Single(PlanAndTell(whole.FirstOpening.Day.AddDays(3), Adviser, partner));
        Assert.Equal(partner, Assert.Single(planned.Recipients));
    }

    [Fact]
    public void A_season_that_ended_months_ago_is_never_told_as_open_even_where_its_weather_stopped_before_its_end()
    {
        Window whole = Some.Judge(Task, Weather, Some.Site(), 2022);
        SiteMetrics metrics = SiteMetrics.Of(Weather.Until(whole.FirstOpening!.Day.AddDays(2))!, Some.Site());
        var late = new DateOnly(2022, 11, 25);
        Assert.Empty(NoticePlan.For(WindowJudge.Judge([Task], metrics, late), metrics, Some.Region(Some.Site(), Adviser), "c1", (_, _) => null));
    }

    [Fact]
    public void Nobody_is_newly_told_of_an_opening_on_weather_that_has_stopped()
    {
        Window whole = Some.Judge(Task, Weather, Some.Site(), 2022);
        SiteMetrics metrics = SiteMetrics.Of(Weather.Until(whole.FirstOpening!.Day.AddDays(2))!, Some.Site());
        DateOnly late = whole.FirstOpening.Day.AddDays(10);
        Standing standing = WindowJudge.Judge([Task], metrics, late);
        Assert.Equal(WindowState.Unknown, standing.Windows[0].State);
        Assert.Contains("It was open then", standing.Windows[0].Because.Sentence(ReadersUnits.Metric), StringComparison.Ordinal);
        Assert.Empty(NoticePlan.For(standing, metrics, Some.Region(Some.Site(), Adviser), "c1", (_, _) => null));
    }

    [Fact]
    public void A_closing_that_comes_in_late_is_told_although_the_opening_was_told_after_it_had_begun()
    {
        Window whole = Some.Judge(Task, Weather, Some.Site(), 2022);
        DateOnly dayBeforePastBest = whole.PastBest!.Day.AddDays(-1);
        // The opening is told two days late, on weather that ends the day before the window goes past its best.
        SiteMetrics late = SiteMetrics.Of(Weather.Until(dayBeforePastBest)!, Some.Site());
        DateOnly toldOn = dayBeforePastBest.AddDays(2);
        PlannedNotice opened = Assert.Single(NoticePlan.For(WindowJudge.Judge([Task], late, toldOn), late, Some.Region(Some.Site(), Adviser), "c1", (_, _) => null));
        var facts = opened.Notice.Facts.ToDictionary(fact => fact.Key, fact => new Told(toldOn, fact.Day, "c1", 0));
        DateOnly today = toldOn.AddDays(1);
        SiteMetrics then = SiteMetrics.Of(Weather.Until(today)!, Some.Site());
        PlannedNotice closing = Assert.Single(NoticePlan.For(
            WindowJudge.Judge([Task], then, today), then, Some.Region(Some.Site(), Adviser), "c1", (key, _) => facts.GetValueOrDefault(key)));
        Assert.Equal(NoticeKind.Closing, closing.Notice.Key.Kind);
    }

    [Theory]
    [InlineData(NoticeKind.Opened)]
    [InlineData(NoticeKind.Closing)]
    [InlineData(NoticeKind.Closed)]
    public void Who_asked_for_one_kind_alone_hears_of_it_once_in_a_season(NoticeKind kind)
    {
        Recipient reader = Adviser with { Notices = [kind] };
        var heard = new List<NoticeKind>();
        for (var day = new DateOnly(2022, 1, 1); day <= new DateOnly(2022, 12, 31); day = day.AddDays(1))
        {
            heard.AddRange(PlanAndTell(day, reader).Select(planned => planned.Notice.Key.Kind));
        }

        Assert.Equal([kind], heard);
    }

    [Fact]
    public void Who_asked_for_closes_alone_hears_nothing_of_one_that_was_over_before_the_first_start()
    {
        Window whole = Some.Judge(Task, Weather, Some.Site(), 2022);
        Assert.Empty(PlanAndTell(whole.LastClosing!.Day.AddDays(10), Adviser with { Notices = [NoticeKind.Closed] }));
    }

    [Fact]
    public void A_close_is_no_news_a_month_later()
    {
        Window whole = Some.Judge(Task, Weather, Some.Site(), 2022);
        Assert.Single(PlanAndTell(whole.FirstOpening!.Day, Adviser));
        Assert.Empty(PlanAndTell(whole.LastClosing!.Day.AddDays(31), Adviser));
    }

    [Fact]
    public void Only_who_asked_for_the_site_the_treatment_and_the_kind_is_told()
    {
        Window whole = Some.Judge(Task, Weather, Some.Site(), 2022);
        Recipient[] others =
        [
            Adviser with { Address = "elsewhere@example.org", Sites = ["other-lawn"] },
            Adviser with { Address = "othertask@example.org", Treatments = ["other-task"] },
            Adviser with { Address = "closings@example.org", Notices = [NoticeKind.Closed] },
            Adviser with { Address = "paused@example.org", PausedUntil = new DateOnly(2023, 1, 1) },
            Adviser,
        ];
        PlannedNotice planned = Assert.Single(PlanAndTell(whole.FirstOpening!.Day, others));
        Assert.Equal(Adviser, Assert.Single(planned.Recipients));
    }

    [Fact]
    public void A_treatment_for_a_history_is_told_only_where_the_site_has_it()
    {
        Treatment grubs = Task with { OnlyWithHistory = "grubs" };
        Window whole = Some.Judge(grubs, Weather, Some.Site(), 2022);
        Assert.Empty(Plan(whole.FirstOpening!.Day, Some.Site(), grubs, Adviser));
        Assert.Single(Plan(whole.FirstOpening.Day, Some.Site() with { History = ["grubs"] }, grubs, Adviser));
    }

    [Fact]
    public void A_notice_carries_the_numbers_with_their_units_and_what_to_expect()
    {
        Window whole = Some.Judge(Task, Weather, Some.Site(), 2022);
        Notice notice = Assert.Single(PlanAndTell(whole.FirstOpening!.Day, Adviser)).Notice;
        Assert.Contains("°F", notice.Reason, StringComparison.Ordinal);
        Assert.Contains("50 °F", Assert.Single(notice.Figures).Limit, StringComparison.Ordinal);
        Assert.Contains("12 earlier seasons", notice.ExpectedEnd, StringComparison.Ordinal);
        Assert.NotEmpty(notice.Cautions);
    }

    [Fact]
    public void Together_puts_the_notices_of_a_pass_into_one_message_and_apart_gives_one_each()
    {
        Window whole = Some.Judge(Task, Weather, Some.Site(), 2022);
        Treatment second = Task with { Id = "second-task", Name = "Second task" };
        Recipient together = Adviser with { Address = "together@example.org", Together = true };
        Region region = Some.Region(Some.Site(), Adviser, together);
        DateOnly day = whole.FirstOpening!.Day;
        SiteMetrics metrics = SiteMetrics.Of(Weather.Until(day)!, Some.Site());
        IReadOnlyList<PlannedNotice> planned = NoticePlan.For(WindowJudge.Judge([Task, second], metrics, day), metrics, region, "c1", (_, _) => null);
        IReadOnlyList<Message> messages = MessagePlan.For(planned, region, day);
        Assert.Equal(2, messages.Count(message => message.Address == Adviser.Address));
        Assert.Equal(2, Assert.Single(messages, message => message.Address == together.Address).Notices.Count);
        Assert.Equal(messages.Count, messages.Select(message => message.MessageId).Distinct(StringComparer.Ordinal).Count());
        Assert.Equal(messages.Select(message => message.MessageId), MessagePlan.For(planned, region, day.AddDays(1)).Select(message => message.MessageId));
    }

    private List<PlannedNotice> PlanAndTell(DateOnly day, params Recipient[] recipients)
    {
        IReadOnlyList<PlannedNotice> planned = Plan(day, Some.Site(), Task, recipients);
        foreach (PlannedNotice each in planned)
        {
            foreach (Recipient recipient in each.Recipients)
            {
                foreach (ToldFact fact in each.Notice.Facts) Tell(fact, recipient, day);
            }
        }

        return [.. planned];
    }

    private void Tell(ToldFact fact, Recipient recipient, DateOnly day)
    {
        (NoticeKey, string) place = (fact.Key with { Revision = 0 }, recipient.Address);
        // One change of one window is told to one person once, unless what was told is corrected.
        Assert.True(!told.TryGetValue(place, out Told? before) || before.Revision < fact.Key.Revision);
        told[place] = new Told(day, fact.Day, "c1", fact.Key.Revision);
    }

    private IReadOnlyList<PlannedNotice> Plan(DateOnly day, Site site, Treatment treatment, params Recipient[] recipients)
    {
        SiteMetrics metrics = SiteMetrics.Of(Weather.Until(day)!, site);
        Standing standing = WindowJudge.Judge([treatment], metrics, day);
        return NoticePlan.For(standing, metrics, Some.Region(site, recipients), "c1", (key, address) => told.GetValueOrDefault((key, address)));
    }
}
