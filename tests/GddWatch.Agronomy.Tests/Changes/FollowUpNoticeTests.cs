using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;
using Xunit;

namespace GddWatch.Agronomy.Tests.Changes;

/// <summary>What is told of a follow-up that begins anew: its second opening, best and close, and no correction of what was right.</summary>
public sealed class FollowUpNoticeTests
{
    private static readonly DailySeries Weather = Some.SmoothYears(2022, 1);
    private static readonly Treatment FollowUp = Some.Treatment(Since(42), Since(56), Since(70), from: "02-15", until: "10-31");
    private static readonly Recipient Adviser = new() { Address = "adviser@example.org", Name = "The adviser" };

    [Fact]
    public void A_follow_up_begun_anew_is_told_again_and_what_was_told_before_is_not_corrected()
    {
        Assert.Equal(
            [
                ("opened", new(2022, 4, 12)), ("closing", new(2022, 4, 26)), ("closed", new(2022, 5, 10)),
                ("opened", new(2022, 7, 13)), ("closing", new(2022, 7, 27)), ("closed", new(2022, 8, 10)),
            ],
            Lived((new(2022, 3, 1), new(2022, 3, 1)), (new(2022, 6, 1), new(2022, 6, 1))));
        Assert.Equal(
            [("opened", new(2022, 4, 12)), ("opened", new(2022, 6, 1)), ("closing", new(2022, 6, 15)), ("closed", new(2022, 6, 29))],
            Lived((new(2022, 3, 1), new(2022, 3, 1)), (new(2022, 4, 20), new(2022, 4, 20))));
    }

    /// <summary>Once a correction has said that it is not past its best, the day on which it is so is told as what differs from that.</summary>
    [Fact]
    public void A_record_entered_late_corrects_what_was_told_in_between() =>
        Assert.Equal(
            [
                ("opened", new(2022, 4, 12)), ("closing", new(2022, 4, 26)), ("corrected", new(2022, 5, 1)),
                ("opened", new(2022, 6, 1)), ("corrected", new(2022, 6, 15)), ("closed", new(2022, 6, 29)),
            ],
            Lived((new(2022, 3, 1), new(2022, 3, 1)), (new(2022, 4, 20), new(2022, 5, 1))));

    private static SinceTreatment Since(int days) => new("barrier", "Barrier", days, null, null, 200);

    /// <summary>The notices of a year lived day by day, each record known from the day on which it was entered.</summary>
    private static List<(string, DateOnly)> Lived(params (DateOnly On, DateOnly Entered)[] records)
    {
        var told = new Dictionary<NoticeKey, Told>();
        var notices = new List<(string, DateOnly)>();
        for (DateOnly day = new(2022, 2, 1); day < new DateOnly(2022, 12, 1); day = day.AddDays(1))
        {
            var journal = new SiteJournal(records.Where(record => record.Entered <= day).Select(record => new TreatmentDone { SiteId = "some-lawn", Treatment = "barrier", On = record.On }));
            SiteMetrics metrics = SiteMetrics.Of(Weather.Until(day)!, Some.Site(), journal);
            IReadOnlyList<PlannedNotice> planned = NoticePlan.For(
                WindowJudge.Judge([FollowUp], metrics, day), metrics, Some.Region(Some.Site(), Adviser), "c1", (key, _) => told.GetValueOrDefault(key));
            foreach (Notice notice in planned.Select(each => each.Notice))
            {
                notices.Add((NoticeKinds.Word(notice.Key.Kind), day));
                foreach (ToldFact fact in notice.Facts)
                {
                    NoticeKey change = fact.Key with { Revision = 0 };
                    Assert.True(!told.TryGetValue(change, out Told? before) || before.Revision < fact.Key.Revision, $"{fact.Key} is told twice.");
                    told[change] = new Told(day, fact.Day, "c1", fact.Key.Revision);
                }
            }
        }

        return notices;
    }
}
