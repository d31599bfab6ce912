using System.Security.Cryptography.X509Certificates;
using GddWatch.Tests.Commands;
using GddWatch.Tests.Loopback;
using MimeKit;
using Xunit;

namespace GddWatch.Tests.Watching;

/// <summary>The worker with a real mail server of this machine: STARTTLS, login, a pinned certificate, all from the configuration.</summary>
public sealed class WatchBySmtpTests
{
    private static readonly DateOnly Day = new(2025, 4, 25);

    [Fact]
    public async Task An_opened_window_reaches_its_reader_through_the_configured_server_once()
    {
        using X509Certificate2 certificate = TestCertificate.SelfSigned();
        await using var server = new LoopbackMailServer(certificate);
        using Workshop workshop = LawnWith(server, certificate);
        Ran ran = await workshop.RunLettingTimePassAsync("watch", "--once");
        Assert.True(ran.Code == 0, ran.Error);
        MimeMessage mail = Assert.Single(server.Received);
        Assert.Equal("adviser@example.org", mail.To.Mailboxes.Single().Address);
        Assert.Contains("The Lawn: Spring pre-emergent window open since", mail.Subject, StringComparison.Ordinal);
        Assert.Contains("opened.spring-pre-emergent.lawn", mail.MessageId, StringComparison.Ordinal);
        Assert.DoesNotContain(LoopbackMailServer.Password, ran.Output + ran.Error, StringComparison.Ordinal);
        await workshop.RunLettingTimePassAsync("watch", "--once");
        Assert.Single(server.Received);
    }

    [Fact]
    public async Task What_the_server_refuses_for_now_comes_later_under_the_same_Message_ID()
    {
        using X509Certificate2 certificate = TestCertificate.SelfSigned();
        await using var server = new LoopbackMailServer(certificate);
        server.Answers.Enqueue(LoopbackMailServer.Refusal(451, "the mailbox is busy"));
        using Workshop workshop = LawnWith(server, certificate);
        Ran refused = await workshop.RunLettingTimePassAsync("watch", "--once");
        Assert.Equal(1, refused.Code);
        Assert.Empty(server.Received);
        Assert.Contains("the mailbox is busy", (await workshop.RunAsync("status")).Output, StringComparison.Ordinal);
        workshop.PutClockTo(workshop.Clock.GetUtcNow().AddHours(8));
        Assert.Equal(0, (await workshop.RunLettingTimePassAsync("watch", "--once")).Code);
        Assert.Contains("opened.spring-pre-emergent.lawn", Assert.Single(server.Received).MessageId, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Check_sends_one_test_mail_on_request()
    {
        using X509Certificate2 certificate = TestCertificate.SelfSigned();
        await using var server = new LoopbackMailServer(certificate);
        using Workshop workshop = LawnWith(server, certificate);
        Ran ran = await workshop.RunLettingTimePassAsync("check", "--send-test", "somebody@example.org");
        Assert.Contains("The test mail went out", ran.Output, StringComparison.Ordinal);
        Assert.Equal("somebody@example.org", Assert.Single(server.Received).To.Mailboxes.Single().Address);
    }

    private static Workshop LawnWith(LoopbackMailServer server, X509Certificate2 certificate)
    {
        Workshop workshop = Workshop.WithOneLawn(SmoothWeather.Csv(new DateOnly(2012, 1, 1), Day));
        workshop.PutClockTo(new DateTimeOffset(Day.AddDays(1).ToDateTime(new TimeOnly(12, 0)), TimeSpan.Zero));
        workshop.SendThrough(server, certificate);
        return workshop;
    }
}
