using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Windows;
using Xunit;

namespace GddWatch.Agronomy.Tests.Changes;

/// <summary>Mails that wait while the lawn goes on.</summary>
public sealed class MailRenewalTests
{
    private static readonly Recipient Adviser = new() { Address = "adviser@example.org", Notices = [NoticeKind.Opened] };

    [Fact]
    public void An_opening_that_waited_until_the_window_had_closed_is_told_as_closed_although_its_reader_asked_for_openings_alone()
    {
        var post = new HeldUpPost(Adviser);
        post.PassOn(post.Opening);
        Message opened = Assert.Single(post.Waiting);
        Assert.Equal(NoticeKind.Opened, opened.Notices[0].Key.Kind);

        DateOnly late = post.Closing.AddDays(20);
        post.PassOn(late);

        Message instead = Assert.Single(post.Waiting);
        Notice notice = Assert.Single(instead.Notices);
        Assert.NotEqual(opened.MessageId, instead.MessageId);
        Assert.Equal(NoticeKind.Closed, notice.Key.Kind);
        Assert.Contains($"A mail of {Wording.Day(post.Opening)} about this window was held up on its way and is out of date: this one takes its place. The window had opened on {Wording.Day(post.Opening)}.", notice.Reason, StringComparison.Ordinal);
        Assert.Equal(["Do not start it now: wait for the next season."], notice.DoNot);
        post.PassOn(late.AddDays(1));
        Assert.Equal(instead.MessageId, Assert.Single(post.Waiting).MessageId);
    }

    [Fact]
    public void An_opening_that_waited_past_the_best_is_told_with_both_days_in_one_mail()
    {
        var post = new HeldUpPost(Adviser with { Notices = Recipient.UsualNotices });
        post.PassOn(post.Opening);
        post.PassOn(post.PastBest);

        Notice notice = Assert.Single(Assert.Single(post.Waiting).Notices);
        Assert.Equal(NoticeKind.Opened, notice.Key.Kind);
        Assert.Contains("past its best since", notice.Headline, StringComparison.Ordinal);
    }

    [Fact]
    public void A_mail_that_is_still_true_stays_the_same_mail()
    {
        var post = new HeldUpPost(Adviser);
        post.PassOn(post.Opening);
        string id = Assert.Single(post.Waiting).MessageId;
        for (DateOnly day = post.Opening.AddDays(1); day < post.PastBest; day = day.AddDays(1)) post.PassOn(day);
        Assert.Equal(id, Assert.Single(post.Waiting).MessageId);
    }

    [Fact]
    public void An_opening_that_was_not_one_after_all_is_replaced_by_word_of_that()
    {
        var post = new HeldUpPost(Adviser);
        post.PassOn(post.Opening);
        post.CorrectWeather();
        post.PassOn(post.Opening.AddDays(1));

        Notice notice = Assert.Single(Assert.Single(post.Waiting).Notices);
        Assert.Equal(NoticeKind.Corrected, notice.Key.Kind);
        Assert.Contains("window is not open after all", notice.Headline, StringComparison.Ordinal);
        Assert.StartsWith($"A mail of {Wording.Day(post.Opening)}, which was held up on its way and whose place this one takes, said that it opened on", notice.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void What_still_stands_of_a_mail_that_is_withdrawn_is_told_again_in_the_fresh_one()
    {
        var post = new HeldUpPost(Adviser with { Together = true }, second: true);
        post.PassOn(post.Opening);
        Assert.Equal(2, Assert.Single(post.Waiting).Notices.Count);
        post.PassOn(post.PastBest);

        Message fresh = Assert.Single(post.Waiting);
        Assert.Equal(["second-task", "some-task"], fresh.Notices.Select(notice => notice.Key.Treatment).Order(StringComparer.Ordinal));
        Assert.Contains("past its best since", fresh.Notices.Single(notice => notice.Key.Treatment == "some-task").Headline, StringComparison.Ordinal);
        Assert.Contains("window opened on", fresh.Notices.Single(notice => notice.Key.Treatment == "second-task").Headline, StringComparison.Ordinal);
    }

    [Fact]
    public void A_mail_to_somebody_who_is_told_no_more_is_withdrawn_without_another()
    {
        var post = new HeldUpPost(Adviser);
        post.PassOn(post.Opening);
        post.Readers = [];
        post.PassOn(post.Opening.AddDays(1));
        Assert.Empty(post.Waiting);
    }

    [Fact]
    public void Weather_that_has_stopped_coming_is_no_evidence_against_a_mail()
    {
        var post = new HeldUpPost(Adviser);
        post.PassOn(post.Opening);
        string id = Assert.Single(post.Waiting).MessageId;
        post.PassOn(post.Opening.AddDays(60), weatherThrough: post.Opening);
        Assert.Equal(id, Assert.Single(post.Waiting).MessageId);
    }
}
