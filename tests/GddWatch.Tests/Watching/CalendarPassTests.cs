using GddWatch.Tests.Commands;
using Ical.Net;
using Ical.Net.CalendarComponents;
using MimeKit;
using Xunit;

namespace GddWatch.Tests.Watching;

/// <summary>The calendars that a pass leaves beside its mails.</summary>
public sealed class CalendarPassTests
{
    [Fact]
    public async Task A_pass_leaves_a_calendar_whose_entries_are_those_of_its_mails()
    {
        using Workshop workshop = Workshop.WithSamples();
        workshop.PutClockTo(new DateTimeOffset(2025, 4, 2, 12, 0, 0, TimeSpan.Zero));
        Ran ran = await workshop.RunAsync("watch", "--once");
        Assert.Equal(0, ran.Code);
        string folder = Path.Combine(workshop.Data, "calendar");
        Assert.Equal(
            ["harbor-lawn.ics", "mill-green.ics", "north-common.ics", "pecan-court.ics", "quarry-park.ics", "windows.ics"],
            Directory.EnumerateFiles(folder).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        Dictionary<string, CalendarEvent> feed = Calendar.Load(File.ReadAllText(Path.Combine(folder, "windows.ics")))!.Events.ToDictionary(each => each.Uid!, StringComparer.Ordinal);
        CalendarEvent[] mailed = [.. workshop.Mails.Values.SelectMany(EntriesOf)];
        Assert.NotEmpty(mailed);
        Assert.All(mailed, each => Assert.Equal(Facts(each), Facts(feed[each.Uid!])));
        Assert.True(feed.Count > mailed.DistinctBy(each => each.Uid).Count(), "windows of which nobody was told stand in it too");
        Assert.Equal(feed.Count, Directory.EnumerateFiles(folder).Sum(file => Calendar.Load(File.ReadAllText(file))!.Events.Count) - feed.Count);
    }

    [Fact]
    public async Task Each_later_mail_of_a_replay_moves_the_entry_and_a_replay_lived_again_leaves_the_same_calendar()
    {
        using Workshop workshop = Workshop.WithSamples();
        await workshop.RunAsync("replay", "--from", "2025-04-01", "--until", "2025-05-07");
        CalendarEvent[] told =
        [
            .. workshop.ReplayMails.Values
                .Where(mail => MimeMessage.Load(new MemoryStream(mail)).To.Mailboxes.Single().Address == "crew@example.org")
                .SelectMany(EntriesOf).Where(each => each.Uid == "north-common.spring-pre-emergent.2025@example.org"),
        ];
        // One mail each about its opening, its passing of its best and its close, whatever goes to others.
        Assert.Equal([1, 2, 3], told.Select(each => each.Sequence));
        Assert.Equal(new DateOnly(2025, 5, 7), told[^1].DtEnd!.Date);
        string file = Path.Combine(workshop.Data, "replay", "calendar", "windows.ics");
        byte[] first = File.ReadAllBytes(file);
        CalendarEvent feed = Calendar.Load(File.ReadAllText(file))!.Events.Single(each => each.Uid == told[0].Uid);
        Assert.Equal(Facts(told[^1]), Facts(feed));
        File.Delete(file);
        await workshop.RunAsync("replay", "--from", "2025-04-01", "--until", "2025-05-07");
        Assert.Equal(first, File.ReadAllBytes(file));
    }

    [Fact]
    public async Task A_calendar_that_cannot_be_written_costs_no_mail_and_is_said()
    {
        using Workshop workshop = Workshop.WithSamples();
        workshop.PutClockTo(new DateTimeOffset(2025, 4, 2, 12, 0, 0, TimeSpan.Zero));
        Directory.CreateDirectory(workshop.Data);
        File.WriteAllText(Path.Combine(workshop.Data, "calendar"), "a file where the folder belongs");
        Ran ran = await workshop.RunAsync("watch", "--once");
        Assert.Equal(1, ran.Code);
        Assert.NotEmpty(workshop.Mails);
    }

    private static (string?, int, DateOnly, DateOnly, string?) Facts(CalendarEvent entry) => (entry.Uid, entry.Sequence, entry.DtStart!.Date, entry.DtEnd!.Date, entry.Status);

    private static IEnumerable<CalendarEvent> EntriesOf(byte[] mail)
    {
        foreach (MimePart part in MimeMessage.Load(new MemoryStream(mail)).BodyParts.OfType<MimePart>().Where(part => part.ContentType.MimeType == "text/calendar"))
        {
            using var text = new MemoryStream();
            part.Content!.DecodeTo(text, TestContext.Current.CancellationToken);
            text.Position = 0;
            foreach (CalendarEvent each in Calendar.Load(text)!.Events) yield return each;
        }
    }
}
