using System.Text;
using GddWatch.Agronomy.Changes;
using GddWatch.Notices.Composing;
using Ical.Net;
using Ical.Net.Serialization;
using Xunit;

namespace GddWatch.Tests.Notices.Composing;

/// <summary>The mark of what a calendar says, against the calendar itself.</summary>
public sealed class CalendarMarkTests
{
    [Fact]
    public void Two_calendars_have_the_same_mark_where_and_only_where_they_say_the_same()
    {
        Notice notice = SampleMessages.PreEmergent with { Entry = SampleMessages.Entry };
        
        const string Operator = "operator@example.org";
        (Notice Notice, string Operator, string Remark)[] windows =
        [
            (notice, Operator, ""),
            (notice with { Day = notice.Day.AddDays(1), Figures = [] }, Operator, ""),
            (notice, Operator, ""),
            (notice, Operator, "Invented."),
            (notice, "operator@example.com", ""),
            (notice with { SiteName = "Another" }, Operator, ""),
            (notice with { TreatmentName = "Another" }, Operator, ""),
            (notice with { Headline = "Another" }, Operator, ""),
            (notice with { Reason = "Another" }, Operator, ""),
            (notice with { Do = ["Another"] }, Operator, ""),
            (notice with { DoNot = ["Another"] }, Operator, ""),
            (notice with { Do = [], DoNot = [.. notice.Do, .. notice.DoNot] }, Operator, ""),
            (notice with { Choices = ["Another"] }, Operator, ""),
            (notice with { Cautions = ["Another"] }, Operator, ""),
            (notice with { DataRemarks = ["Another"] }, Operator, ""),
            (notice with { Key = notice.Key with { Site = "another" } }, Operator, ""),
            (notice with { Key = notice.Key with { Kind = NoticeKind.Closed } }, Operator, ""),
            (notice with { Key = notice.Key with { Kind = NoticeKind.Closing } }, Operator, ""),
            (notice with { Entry = SampleMessages.Entry with { Sequence = 99 } }, Operator, ""),
            (notice with { Entry = SampleMessages.Entry with { First = SampleMessages.Entry.First.AddDays(1) } }, Operator, ""),
            (notice with { Entry = SampleMessages.Entry with { End = SampleMessages.Entry.End.AddDays(1) } }, Operator, ""),
            (notice with { Entry = SampleMessages.Entry with { EndWords = "Another" } }, Operator, ""),
            (notice with { Entry = SampleMessages.Entry with { IsWithdrawn = true } }, Operator, ""),
        ];
        CalendarText[] texts = [.. windows.Select(window => Assert.Single(CalendarFile.TextsOf([window.Notice], window.Operator, window.Remark)))];
        byte[][] calendars = [.. texts.Select((text, i) => CalendarFile.Feed("One", [WrittenEntry.Of(text)], SampleMessages.QueuedAt.AddDays(i)))];
        byte[][] marks = [.. texts.Select(text => text.Mark())];
        int alike = 0;
        for (int one = 0; one < windows.Length; one++)
        {
            for (int other = 0; other < one; other++)
            {
                bool isSame = CalendarFile.SaysTheSame(calendars[one], calendars[other]);
                Assert.True(isSame == marks[one].AsSpan().SequenceEqual(marks[other]), $"calendars {other} and {one}");
                alike += isSame ? 1 : 0;
            }
        }

        // The day of judging and the figures stand in no calendar.
        Assert.Equal(3, alike);
    }

    [Fact]
    public void An_entry_that_says_the_same_as_the_day_before_is_not_written_anew()
    {
        var entries = new WrittenEntries();
        CalendarText text = Assert.Single(CalendarFile.TextsOf([SampleMessages.PreEmergent with { Entry = SampleMessages.Entry }], "operator@example.org", ""));
        WrittenEntry first = entries.Of(text);
        entries.NextDay();
        Assert.Same(first, entries.Of(text with { }));
        Assert.NotSame(first, entries.Of(text with { Summary = "Another" }));
        entries.NextDay();
        entries.NextDay();
        Assert.NotSame(first, entries.Of(text));
    }

    [Fact]
    public void A_calendar_put_together_of_its_entries_is_what_the_library_writes_of_all_at_once()
    {
        CalendarText[] texts =
        [
            .. CalendarFile.TextsOf(
                [
                    SampleMessages.PreEmergent with { Entry = SampleMessages.Entry, Reason = "First line\nDTSTAMP:19700101T000000Z, and \"more\"; é 漢字 🌱" },
                    SampleMessages.PreEmergent with { Entry = SampleMessages.Entry with { IsWithdrawn = true, Sequence = 7 }, Key = SampleMessages.PreEmergent.Key with { Site = "another" } },
                ],
                "operator@example.org", "Invented."),
        ];
        string together = Encoding.UTF8.GetString(CalendarFile.Feed("A name", [.. texts.Select(WrittenEntry.Of)], SampleMessages.QueuedAt));
        Calendar read = Calendar.Load(together)!;
        Assert.Equal(texts.Select(text => text.Description), read.Events.Select(each => each.Description));
        Assert.All(read.Events, each => Assert.Equal(SampleMessages.QueuedAt.UtcDateTime, each.DtStamp!.AsUtc));
        string again = new CalendarSerializer().SerializeToString(read)!;
        Assert.Equal(Unfolded(again), Unfolded(together));
    }

    private static string Unfolded(string calendar) => calendar.Replace("\r\n ", "", StringComparison.Ordinal);
}
