using System.Globalization;
using System.Text.RegularExpressions;
using GddWatch.Configuration.Settings;
using GddWatch.Tests.Commands;
using MimeKit;
using Xunit;

namespace GddWatch.Tests.Watching;

/// <summary>The weekly bulletin, from its day to the mail that a phone shows.</summary>
public sealed partial class BulletinTests
{
    [Fact]
    public async Task One_mail_a_region_and_week_goes_to_who_asked_for_it_with_every_site_in_it()
    {
        using Workshop workshop = Workshop.WithSamples();
        await workshop.RunAsync("replay", "--from", "2025-05-01", "--until", "2025-05-31");
        MimeMessage[] bulletins = Bulletins(workshop.ReplayMails);
        // Mondays of May 2025.
        Assert.Equal([5, 12, 19, 26], bulletins.Select(mail => mail.Date.Day));
        Assert.All(bulletins, mail => Assert.Equal("adviser@example.org", mail.To.Mailboxes.Single().Address));
        string text = bulletins[1].TextBody!;
        Assert.All(["NORTH COMMON", "QUARRY PARK", "MILL GREEN", "PECAN COURT", "HARBOR LAWN"], site => Assert.Contains(site, text, StringComparison.Ordinal));
        Assert.All(
            ["Open:", "Nearing:", "This week:", "Must wait:", "Mowing", "Watering", "days left", "never more than a third", "Why these must wait:", "label is the law", "invented"],
            words => Assert.Contains(words, text, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_date_that_stands_beside_a_range_of_dates_lies_within_it_in_every_mail_of_a_month()
    {
        using Workshop workshop = Workshop.WithSamples();
        await workshop.RunAsync("replay", "--from", "2025-05-08", "--until", "2025-06-09");
        int ranges = 0;
        foreach (MimeMessage mail in workshop.ReplayMails.Values.Select(bytes => MimeMessage.Load(new MemoryStream(bytes))))
        {
            var today = DateOnly.FromDateTime(mail.Date.Date);
            string text = Flat(mail);
            foreach (Match match in DateBesideRange().Matches(text))
            {
                DateOnly until = Day(match.Groups["until"].Value, today), last = Day(match.Groups["last"].Value, today), first = Day(match.Groups["first"].Value, last);
                Assert.InRange(until, first, last);
                if (match.Groups["days"].Success) Assert.Equal(until, today.AddDays(int.Parse(match.Groups["days"].Value, CultureInfo.InvariantCulture)));
                ranges++;
            }

            foreach (Match match in DateOfWeekday().Matches(text)) Day(match.Value, today);
        }

        Assert.True(ranges >= 20, $"Only {ranges} dates beside ranges were told.");
    }

    /// <summary>"about 5 days left, until Saturday 7 June (likely to close between Wednesday 4 and Friday 13 June)"; "closes about Saturday 7 June 2025 (likely between …".</summary>
    [GeneratedRegex(@"(?:about (?<days>\d+) days? left, until|closes about) (?<until>\w+day \d+ \w+)(?: \d{4})? \(likely (?:to close )?between (?<first>\w+day \d+(?: [A-Z]\w+)?) and (?<last>\w+day \d+ \w+)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex DateBesideRange();

    [GeneratedRegex(@"\w+day \d+ (?:January|February|March|April|May|June|July|August|September|October|November|December)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex DateOfWeekday();

    /// <summary>A date in words as of the year of another; its weekday must be the right one. Without a month it is in that of the other.</summary>
    private static DateOnly Day(string words, DateOnly other)
    {
        string[] parts = words.Split(' ');
        int month = parts.Length > 2 ? DateTime.ParseExact(parts[2], "MMMM", CultureInfo.InvariantCulture).Month : other.Month;
        DateOnly[] near = [.. Enumerable.Range(-1, 3).Select(year => new DateOnly(other.Year + year, month, int.Parse(parts[1], CultureInfo.InvariantCulture))).Where(day => day.DayOfWeek.ToString() == parts[0])];
        return Assert.Single(near, day => Math.Abs(day.DayNumber - other.DayNumber) < 300);
    }

    [Fact]
    public async Task It_is_short_enough_for_a_phone_and_carries_a_chart_of_each_site_with_words_for_who_cannot_see_it()
    {
        using Workshop workshop = Workshop.WithSamples();
        await workshop.RunAsync("replay", "--from", "2025-05-10", "--until", "2025-05-12");
        MimeMessage mail = Assert.Single(Bulletins(workshop.ReplayMails));
        // A site takes no more than two screens of text.
        Assert.InRange(mail.TextBody!.Split("------").Length, 5, 100);
        Assert.All(mail.TextBody!.Split(new string('-', 60)), part => Assert.InRange(part.Length, 0, 3000));
        MimePart[] pictures = [.. mail.BodyParts.OfType<MimePart>().Where(part => part.ContentType.MimeType == "image/png")];
        Assert.Equal(5, pictures.Length);
        foreach (MimePart picture in pictures)
        {
            Assert.Contains($"cid:{picture.ContentId}", mail.HtmlBody, StringComparison.Ordinal);
            using var bytes = new MemoryStream();
            picture.Content!.DecodeTo(bytes, TestContext.Current.CancellationToken);
            Assert.Equal([0x89, 0x50, 0x4E, 0x47], bytes.ToArray()[..4]);
            Assert.InRange(bytes.Length, 2_000, 60_000);
        }

        Assert.Contains("alt=\"Soil at 2 inches on Monday 12 May 2025", System.Net.WebUtility.HtmlDecode(mail.HtmlBody), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_recorded_stands_in_it_and_what_it_holds_must_wait_with_its_reason()
    {
        using Workshop workshop = Workshop.WithSamples();
        workshop.PutClockTo(new DateTimeOffset(2025, 9, 8, 12, 0, 0, TimeSpan.Zero));
        await workshop.RunAsync("record", "done", "autumn-pre-emergent", "--site", "quarry-park", "--on", "2025-09-03", "--no-seed-until", "2026-03-01");
        await workshop.RunAsync("watch", "--once");
        string text = Flat(Assert.Single(Bulletins(workshop.Mails)));
        Assert.Contains("Autumn pre-emergent (cool-season turf): recorded for Wednesday 3 September", text, StringComparison.Ordinal);
        Assert.Contains("Overseeding cool-season turf: held: Autumn pre-emergent (cool-season turf) is recorded for Wednesday 3 September 2025", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_local_ban_is_named_where_a_window_stands_open_and_no_notice_is_sent()
    {
        using Workshop workshop = Workshop.WithSamples();
        string region = Path.Combine(workshop.Config, "region.yaml");
        File.WriteAllText(region, File.ReadAllText(region).Replace("kind: feeding, from: 11-15", "kind: feeding, from: 04-01", StringComparison.Ordinal).Replace("until: 03-01", "until: 10-31", StringComparison.Ordinal));
        await workshop.RunAsync("replay", "--from", "2025-04-20", "--until", "2025-05-12");
        Assert.Contains("a local rule bans it until 31 October (invented county code 12-4)", Flat(Bulletins(workshop.ReplayMails)[^1]), StringComparison.Ordinal);
        Assert.DoesNotContain(workshop.ReplayMails.Keys, name => name.Contains("feeding.north-common", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_service_that_slept_on_the_day_sends_it_later_in_the_week_and_once()
    {
        using Workshop workshop = Workshop.WithSamples();
        async Task PassOnAsync(int day)
        {
            workshop.PutClockTo(new DateTimeOffset(2025, 5, day, 12, 0, 0, TimeSpan.Zero));
            await workshop.RunAsync("watch", "--once");
        }

        await PassOnAsync(8);
        Assert.Empty(Bulletins(workshop.Mails));
        await PassOnAsync(12);
        Assert.Single(Bulletins(workshop.Mails));
        await PassOnAsync(13);
        Assert.Single(Bulletins(workshop.Mails));
        await PassOnAsync(21);
        await PassOnAsync(22);
        Assert.Equal(2, Bulletins(workshop.Mails).Length);
    }

    [Fact]
    public async Task It_waits_for_its_time_of_day_in_its_own_time_zone_and_may_be_turned_off()
    {
        using Workshop workshop = Workshop.WithSamples();
        string settings = Path.Combine(workshop.Config, "appsettings.json");
        File.WriteAllText(settings, """{ "Schedule": { "At": "06:00", "BulletinOn": "Monday", "BulletinAt": "18:00", "BulletinTimeZone": "America/New_York" } }""");
        workshop.PutClockTo(new DateTimeOffset(2025, 5, 12, 12, 0, 0, TimeSpan.Zero));
        await workshop.RunAsync("watch", "--once");
        Assert.Empty(Bulletins(workshop.Mails));
        workshop.PutClockTo(new DateTimeOffset(2025, 5, 12, 22, 0, 1, TimeSpan.Zero));
        await workshop.RunAsync("watch", "--once");
        Assert.Single(Bulletins(workshop.Mails));
        File.WriteAllText(settings, """{ "Schedule": { "At": "06:00", "BulletinOn": "" } }""");
        workshop.PutClockTo(new DateTimeOffset(2025, 5, 19, 23, 0, 0, TimeSpan.Zero));
        await workshop.RunAsync("watch", "--once");
        Assert.Single(Bulletins(workshop.Mails));
    }

    [Theory]
    [InlineData("""{ "BulletinOn": "Mondey" }""", "Schedule:BulletinOn", "Monday")]
    [InlineData("""{ "BulletinOn": "3" }""", "Schedule:BulletinOn", "Monday")]
    [InlineData("""{ "BulletinAt": "7" }""", "Schedule:BulletinAt", "07:30")]
    [InlineData("""{ "BulletinTimeZone": "Chicago" }""", "Schedule:BulletinTimeZone", "America/Chicago")]
    public async Task A_wrong_setting_is_named_with_what_is_accepted(string schedule, string key, string accepted)
    {
        using Workshop workshop = Workshop.WithSamples();
        File.WriteAllText(Path.Combine(workshop.Config, "appsettings.json"), $"{{ \"Schedule\": {schedule} }}");
        Ran ran = await workshop.RunAsync("watch", "--once");
        Assert.Equal(2, ran.Code);
        Assert.Contains(key, ran.Error, StringComparison.Ordinal);
        Assert.Contains(accepted, ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void The_day_of_a_bulletin_is_the_last_one_of_its_weekday()
    {
        var time = new BulletinTime(DayOfWeek.Thursday, null, null);
        Assert.Equal(new DateOnly(2025, 5, 8), time.LastOn(new DateOnly(2025, 5, 8)));
        Assert.Equal(new DateOnly(2025, 5, 8), time.LastOn(new DateOnly(2025, 5, 14)));
        Assert.Equal(new DateOnly(2025, 5, 15), time.LastOn(new DateOnly(2025, 5, 15)));
    }

    private static string Flat(MimeMessage mail) => string.Join(' ', mail.TextBody!.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private static MimeMessage[] Bulletins(SortedDictionary<string, byte[]> mails) =>
        [.. mails.Where(mail => mail.Key.Contains(".bulletin.", StringComparison.Ordinal)).Select(mail => MimeMessage.Load(new MemoryStream(mail.Value)))];
}
