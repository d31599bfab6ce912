using System.Security.Cryptography.X509Certificates;
using GddWatch.Tests.Commands;
using GddWatch.Tests.Loopback;
using Xunit;

namespace GddWatch.Tests.Watching;

/// <summary>An address that refuses its mails: paused, told to the operator by other means than mail, and taken up again with the present state.</summary>
public sealed class PausedAddressTests
{
    private const string Adviser = "adviser@example.org";

    private static readonly DateOnly Day = new(2025, 5, 16);

    [Fact]
    public async Task It_is_paused_shown_and_taken_up_again_with_how_things_stand_then()
    {
        using X509Certificate2 certificate = TestCertificate.SelfSigned();
        await using var server = new LoopbackMailServer(certificate);
        using Workshop workshop = LawnWith(server, certificate);
        for (int mail = 0; mail < 3; mail++) server.Answers.Enqueue(LoopbackMailServer.Refusal(550, "no such user"));

        Assert.Equal(1, (await workshop.RunLettingTimePassAsync("watch", "--once")).Code);
        server.Answers.Clear();
        Assert.Empty(server.Received);
        const string paused = "Paused: adviser@example.org, since Saturday 17 May 2025, after 3 mails that were refused for good; 550 no such user";
        Assert.Contains(paused, (await workshop.RunAsync("status")).Output, StringComparison.Ordinal);
        Ran forPrograms = await workshop.RunAsync("status", "--format", "json");
        Assert.Contains(paused, forPrograms.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("Paused", forPrograms.Output, StringComparison.Ordinal);
        Assert.Contains(paused, (await workshop.RunAsync("check")).Error, StringComparison.Ordinal);

        // Nothing more is tried, and nothing new is queued for it.
        workshop.PutClockTo(workshop.Clock.GetUtcNow().AddHours(1));
        Assert.Equal(0, (await workshop.RunLettingTimePassAsync("watch", "--once")).Code);
        Assert.Empty(server.Received);

        Assert.Equal(1, (await workshop.RunAsync("resume", "nobody@example.org")).Code);
        Assert.Equal(0, (await workshop.RunAsync("resume", "Adviser@example.org")).Code);
        Assert.Equal(0, (await workshop.RunLettingTimePassAsync("watch", "--once")).Code);
        Assert.True(server.Received.Count >= 3, $"{server.Received.Count} mails");
        Assert.All(server.Received, mail => Assert.Equal(Adviser, mail.To.Mailboxes.Single().Address));
        Assert.Equal(server.Received.Count, server.Received.Select(mail => mail.Subject).Distinct(StringComparer.Ordinal).Count());
        string status = (await workshop.RunAsync("status")).Output;
        Assert.DoesNotContain("Paused", status, StringComparison.Ordinal);
        Assert.DoesNotContain("Not delivered", status, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Another_address_in_the_region_is_told_the_present_state_and_the_old_one_is_forgotten()
    {
        using X509Certificate2 certificate = TestCertificate.SelfSigned();
        await using var server = new LoopbackMailServer(certificate);
        using Workshop workshop = LawnWith(server, certificate);
        for (int mail = 0; mail < 3; mail++) server.Answers.Enqueue(LoopbackMailServer.Refusal(550, "no such user"));
        await workshop.RunLettingTimePassAsync("watch", "--once");
        server.Answers.Clear();
        Correct(workshop, Adviser, "new.adviser@example.org");

        Assert.Equal(0, (await workshop.RunLettingTimePassAsync("watch", "--once")).Code);

        Assert.All(server.Received, mail => Assert.Equal("new.adviser@example.org", mail.To.Mailboxes.Single().Address));
        Assert.True(server.Received.Count >= 3, $"{server.Received.Count} mails");
        Assert.DoesNotContain("Paused", (await workshop.RunAsync("status")).Output, StringComparison.Ordinal);
    }

    private static void Correct(Workshop workshop, string from, string to)
    {
        string region = Path.Combine(workshop.Config, "region.yaml");
        File.WriteAllText(region, File.ReadAllText(region).Replace(from, to, StringComparison.Ordinal));
    }

    private static Workshop LawnWith(LoopbackMailServer server, X509Certificate2 certificate)
    {
        Workshop workshop = Workshop.WithOneLawn(SmoothWeather.Csv(new DateOnly(2012, 1, 1), Day));
        Correct(workshop, "[spring-pre-emergent, grub-preventive, overseeding]", "all");
        workshop.PutClockTo(new DateTimeOffset(Day.AddDays(1).ToDateTime(new TimeOnly(12, 0)), TimeSpan.Zero));
        workshop.SendThrough(server, certificate);
        return workshop;
    }
}
