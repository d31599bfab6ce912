using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Notices.Composing;
using Xunit;

namespace GddWatch.Tests.Notices.Composing;

/// <summary>The mark of what a calendar says, against the calendar itself.</summary>
public sealed class CalendarMarkTests
{
    [Fact]
    public void Two_calendars_have_the_same_mark_where_and_only_where_they_say_the_same()
    {
        Notice notice = SampleMessages.PreEmergent with { Entry = SampleMessages.Entry };
        Region region = new() { Name = "Alder Reach", TimeZone = "America/Chicago", Units = ReadersUnits.UnitedStates, OperatorAddress = "operator@example.org", Sites = [], Recipients = [] };
        (string Name, Notice[] Notices, Region Region)[] feeds =
        [
            ("One", [notice], region),
            ("One", [notice with { Day = notice.Day.AddDays(1), Figures = [] }], region),
            ("Two", [notice], region),
            ("One", [notice, notice], region),
            ("One", [], region),
            ("One", [notice with { Entry = null }], region),
            ("One", [notice], region with { Remark = "Invented." }),
            ("One", [notice], region with { OperatorAddress = "operator@example.com" }),
            ("One", [notice with { SiteName = "Another" }], region),
            ("One", [notice with { TreatmentName = "Another" }], region),
            ("One", [notice with { Headline = "Another" }], region),
            ("One", [notice with { Reason = "Another" }], region),
            ("One", [notice with { Do = ["Another"] }], region),
            ("One", [notice with { DoNot = ["Another"] }], region),
            ("One", [notice with { Do = [], DoNot = [.. notice.Do, .. notice.DoNot] }], region),
            ("One", [notice with { Choices = ["Another"] }], region),
            ("One", [notice with { Cautions = ["Another"] }], region),
            ("One", [notice with { DataRemarks = ["Another"] }], region),
            ("One", [notice with { Key = notice.Key with { Site = "another" } }], region),
            ("One", [notice with { Key = notice.Key with { Kind = NoticeKind.Closed } }], region),
            ("One", [notice with { Key = notice.Key with { Kind = NoticeKind.Closing } }], region),
            ("One", [notice with { Entry = SampleMessages.Entry with { Sequence = 99 } }], region),
            ("One", [notice with { Entry = SampleMessages.Entry with { First = SampleMessages.Entry.First.AddDays(1) } }], region),
            ("One", [notice with { Entry = SampleMessages.Entry with { End = SampleMessages.Entry.End.AddDays(1) } }], region),
            ("One", [notice with { Entry = SampleMessages.Entry with { EndWords = "Another" } }], region),
            ("One", [notice with { Entry = SampleMessages.Entry with { IsWithdrawn = true } }], region),
        ];
        byte[][] calendars = [.. feeds.Select((feed, i) => CalendarFile.Feed(feed.Name, feed.Notices, feed.Region, SampleMessages.QueuedAt.AddDays(i)))];
        byte[][] marks = [.. feeds.Select(feed => CalendarFile.MarkOf(feed.Name, feed.Notices, feed.Region))];
        int alike = 0;
        for (int one = 0; one < feeds.Length; one++)
        {
            for (int other = 0; other < one; other++)
            {
                bool isSame = CalendarFile.SaysTheSame(calendars[one], calendars[other]);
                Assert.True(isSame == marks[one].AsSpan().SequenceEqual(marks[other]), $"calendars {other} and {one}");
                alike += isSame ? 1 : 0;
            }
        }

        // The day of judging and the figures stand in no calendar, and an empty one is as one without entries.
        Assert.Equal(2, alike);
    }
}
