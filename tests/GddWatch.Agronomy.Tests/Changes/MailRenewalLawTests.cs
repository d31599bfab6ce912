using CsCheck;
using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Windows;
using Xunit;

namespace GddWatch.Agronomy.Tests.Changes;

/// <summary>Whenever the mail server is there and whenever it is not, and whatever the source corrects.</summary>
public sealed class MailRenewalLawTests
{
    private const int Seasons = 100;

    [Fact]
    public void No_mail_is_delivered_that_is_not_so_on_its_day_and_who_would_have_heard_of_the_window_hears_of_it()
    {
        Dictionary<(DateOnly, DateOnly, bool), (SiteMetrics, Standing)> judged = [];
        NoticeKind[][] wishes = [[.. Recipient.UsualNotices], [NoticeKind.Opened], [NoticeKind.Closed], [NoticeKind.Opened, NoticeKind.Closed]];
        Gen.Select(Gen.Int[0, 20].Array[10], Gen.Int[0, 3], Gen.Bool, Gen.Bool, Gen.Int[0, 40]).Sample(
            (spells, wish, together, isCorrected, correctedAfter) =>
            {
                var post = new HeldUpPost(new Recipient { Address = "adviser@example.org", Notices = wishes[wish], Together = together }, second: true, judged);
                var delivered = new List<Message>();
                int passes = 0;
                bool wasQueued = false;
                foreach ((DateOnly day, bool isThere) in Days(post, spells))
                {
                    if (isCorrected && passes++ == correctedAfter) post.CorrectWeather();
                    wasQueued |= post.PassOn(day).Count > 0;
                    if (!isThere) continue;
                    Assert.All(post.Waiting.SelectMany(message => message.Notices.Select(notice => new HeldUpNotice(message.MessageId, message.Address, message.Day, notice.Facts))), notice => Assert.False(notice.IsOutOfDate(post.Standing!)));
                    delivered.AddRange(post.Waiting);
                    post.Waiting.Clear();
                }

                Assert.Equal(wasQueued, delivered.Count > 0);
                // The last that was said is how it is.
                Notice? last = delivered.SelectMany(message => message.Notices).LastOrDefault(notice => notice.Key.Treatment == "some-task");
                if (last is not null && wishes[wish].Contains(NoticeKind.Closed)) Assert.Equal(NoticeKind.Closed, last.Key.Kind);
            },
            iter: Seasons,
            threads: 1);
    }

    /// <summary>The days from before the opening to after the close, with spells in which the server is there and is not; on the last day it is.</summary>
    private static IEnumerable<(DateOnly Day, bool IsThere)> Days(HeldUpPost post, int[] spells)
    {
        DateOnly day = post.Opening.AddDays(-3);
        bool isThere = false;
        foreach (int spell in spells)
        {
            for (int i = 0; i < spell && day < post.Closing.AddDays(9); i++, day = day.AddDays(1)) yield return (day, isThere);
            isThere = !isThere;
        }

        for (; day < post.Closing.AddDays(10); day = day.AddDays(1)) yield return (day, day == post.Closing.AddDays(9));
    }
}
