using System.Globalization;
using System.Text.RegularExpressions;
using GddWatch.Tests.Commands;
using MimeKit;
using Xunit;

namespace GddWatch.Tests.Watching;

/// <summary>A replay says of the days ahead what the service said on those days.</summary>
public sealed partial class ReplayedChancesTests
{
    [Fact]
    public async Task The_same_evenings_lived_by_the_service_and_replayed_give_the_same_mails_with_the_same_chances()
    {
        DateOnly from = new(2026, 3, 16), until = new(2026, 4, 14);
        await using var lawn = new ForecastLawn(
            // Errors that grow and turn about, so that medians move and what is learned of the errors counts; one day is always missing, and one forecast contradicts the one before.
            (issued, day) => issued == new DateOnly(2026, 3, 25) ? 15 : issued.Day % 10 == 0 && day == issued.AddDays(4) ? double.NaN : 1.2 * Math.Sqrt(day.DayNumber - issued.DayNumber) * Math.Sin(issued.DayNumber * 1.7),
            "treatments: [spring-pre-emergent, spring-feeding], notices: [heads-up, opened, closing, closed, corrected, bulletin]",
            "{ within: 21 days, chance: 50 %, again-when-moved: 2 days }");
        for (DateOnly day = from; day <= until; day = day.AddDays(1))
        {
            // A service that failed on a day leaves a hole in what is kept of forecasts, live and replayed.
            lawn.IsDown = day.DayNumber % 11 == 0;
            Ran ran = await lawn.PassAsync(day, 20, day);
            Assert.True(ran.Code == 0, ran.Error);
        }

        Ran replayed = await lawn.Workshop.RunAsync("replay", "--from", $"{from:yyyy-MM-dd}", "--until", $"{until:yyyy-MM-dd}");
        Assert.True(replayed.Code == 0, replayed.Error);
        Dictionary<string, string> live = Told(lawn.Workshop.Mails), then = Told(lawn.Workshop.ReplayMails);
        Assert.Equal(live.Keys.Order(StringComparer.Ordinal), then.Keys.Order(StringComparer.Ordinal));
        foreach ((string mail, string text) in live) Assert.Equal(text, then[mail]);
        string[] headsUps = [.. live.Where(mail => mail.Key.Contains(".heads-up.", StringComparison.Ordinal)).Select(mail => mail.Value)];
        Assert.True(headsUps.Length >= 2, "The median was to move.");
        // Nothing is told again before the day of an even chance has moved by two days.
        DateOnly[] medians = [.. headsUps.Select(text => DateOnly.ParseExact(EvenChance().Match(text).Groups["day"].Value, "d MMMM yyyy", CultureInfo.InvariantCulture))];
        Assert.All(medians.Zip(medians.Skip(1)), pair => Assert.True(Math.Abs(pair.Second.DayNumber - pair.First.DayNumber) >= 2));
        Assert.Contains(headsUps, text => text.Contains("days of forecast and", StringComparison.Ordinal));
        Assert.Contains(headsUps.Skip(1), text => text.Contains("This has moved: on ", StringComparison.Ordinal));
    }

    [GeneratedRegex(@"Even chance that it has opened by: \w+ (?<day>\d+ \w+ \d{4})", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex EvenChance();

    /// <summary>What the readers see of each mail, pictures included; those to the operator are about the service itself.</summary>
    private static Dictionary<string, string> Told(SortedDictionary<string, byte[]> mails)
    {
        var told = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach ((string name, byte[] bytes) in mails)
        {
            MimeMessage mail = MimeMessage.Load(new MemoryStream(bytes));
            if (mail.To.Mailboxes.Single().Address != "adviser@example.org") continue;
            string pictures = string.Concat(mail.BodyParts.OfType<MimePart>().Where(part => part.ContentType.IsMimeType("image", "png")).Select(part =>
            {
                using var bytes = new MemoryStream();
                part.Content!.DecodeTo(bytes);
                return Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(bytes.ToArray()));
            }));
            told.Add(name, string.Create(CultureInfo.InvariantCulture, $"{mail.Subject}\n{mail.Date:yyyy-MM-dd}\n{mail.TextBody}\n{mail.HtmlBody}\n{pictures}"));
        }

        return told;
    }
}
