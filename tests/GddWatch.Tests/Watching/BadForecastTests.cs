using System.Net;
using System.Security.Cryptography.X509Certificates;
using GddWatch.Tests.Commands;
using GddWatch.Tests.Loopback;
using MimeKit;
using Xunit;

namespace GddWatch.Tests.Watching;

/// <summary>
/// A forecast that is bad, from the service that gives it to the mails that a reader gets from a mail server of this machine: each trouble is named there, and what is told of the days ahead goes on
/// without it.
/// </summary>
public sealed class BadForecastTests
{
    // A Monday, a fortnight before the soil usually is warm enough; a heads-up comes three weeks ahead here.
    private static readonly DateOnly Today = new(2026, 3, 30);

    [Theory]
    [InlineData(Trouble.NoTrouble, "8 days of forecast and 13 earlier years here", null)]
    [InlineData(Trouble.MissingDays, "3 days of forecast and 13 earlier years here", "The forecast of Monday 30 March 2026 lacks Thursday 2 April 2026: from that day on this site's own earlier years stand in.")]
    [InlineData(Trouble.Contradiction, "8 days of forecast and 13 earlier years here", "The forecast of Monday 30 March 2026 contradicts the one of Sunday 29 March 2026: Monday 30 March 2026 is now colder by far; it is trusted less.")]
    [InlineData(Trouble.Stale, "13 earlier years here, no forecast", "The last forecast is from Friday 27 March 2026, too old to be used on Monday 30 March 2026: this site's own earlier years stand in.")]
    [InlineData(Trouble.None, "13 earlier years here, no forecast", "There is no forecast: this site's own earlier years stand in.")]
    public async Task A_bad_forecast_is_named_in_the_heads_up_and_in_the_bulletin_and_survived(Trouble trouble, string basis, string? named)
    {
        await using var lawn = new ForecastLawn(
            (issued, day) => trouble switch
            {
                Trouble.Contradiction when issued < Today => 20,
                Trouble.MissingDays when day.DayNumber - issued.DayNumber is 3 or 4 => double.NaN,
                _ => 0,
            },
            $"treatments: [spring-pre-emergent], notices: [heads-up, bulletin], paused-until: {Today:yyyy-MM-dd}",
            "{ within: 21 days, chance: 60 %, again-when-moved: 7 days }");
        lawn.IsDown = trouble == Trouble.None;
        using X509Certificate2 certificate = TestCertificate.SelfSigned();
        await using var server = new LoopbackMailServer(certificate);
        lawn.Workshop.SendThrough(server, certificate);
        await PassOnAsync(trouble == Trouble.Stale ? Today.AddDays(-3) : Today.AddDays(-1));
        Assert.DoesNotContain(server.Received, mail => mail.To.Mailboxes.Any(to => to.Address == "adviser@example.org"));
        lawn.IsDown |= trouble == Trouble.Stale;
        await PassOnAsync(Today);

        MimeMessage headsUp = Assert.Single(server.Received, mail => mail.MessageId!.Contains("heads-up", StringComparison.Ordinal));
        MimeMessage bulletin = Assert.Single(server.Received, mail => mail.MessageId!.Contains("bulletin", StringComparison.Ordinal));
        Assert.Matches(@"^The Lawn: Spring pre-emergent is likely to open between \w+day \d+( \w+)? and \w+day \d+ April$", headsUp.Subject);
        Assert.Contains($"%, judged by {basis}. The 5-day mean soil temperature", Flat(headsUp), StringComparison.Ordinal);
        Assert.Contains("Spring pre-emergent: likely to open between", Flat(bulletin), StringComparison.Ordinal);
        Assert.Contains($"The days ahead are judged by {basis}.", Flat(bulletin), StringComparison.Ordinal);
        if (named is null) return;
        Assert.Contains(named, Flat(headsUp), StringComparison.Ordinal);
        Assert.Contains(named, Flat(WebUtility.HtmlDecode(headsUp.HtmlBody!)), StringComparison.Ordinal);
        // That there never was one is no news each week.
        if (trouble != Trouble.None) Assert.Contains(named, Flat(bulletin), StringComparison.Ordinal);
        Ran status = await lawn.Workshop.RunAsync("status");
        Assert.Contains(trouble == Trouble.None ? "Likely to open between" : $"Days ahead: {named}", Flat(status.Output), StringComparison.Ordinal);

        async Task PassOnAsync(DateOnly day)
        {
            Ran ran = await lawn.PassAsync(day, 12, day.AddDays(-1));
            Assert.True(ran.Code == 0, ran.Error);
            Assert.DoesNotContain("   at ", ran.Error, StringComparison.Ordinal);
        }
    }

    /// <summary>What is the matter with the forecast.</summary>
    public enum Trouble
    {
        /// <summary>Nothing.</summary>
        NoTrouble,

        /// <summary>It lacks two of its days.</summary>
        MissingDays,

        /// <summary>The one of the day before said otherwise by far.</summary>
        Contradiction,

        /// <summary>The service has been down for three days.</summary>
        Stale,

        /// <summary>The service never answered.</summary>
        None,
    }

    private static string Flat(MimeMessage mail) => Flat(mail.TextBody!);

    private static string Flat(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
