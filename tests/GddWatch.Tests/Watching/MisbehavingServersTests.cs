using System.Security.Cryptography.X509Certificates;
using GddWatch.Notices.Channels;
using GddWatch.Storage;
using GddWatch.Tests.Loopback;
using GddWatch.Watching;
using Xunit;
using static GddWatch.Tests.Loopback.ScriptedMailServer;

namespace GddWatch.Tests.Watching;

/// <summary>Mail servers that misbehave, as the queue sees them: each in a named outcome, nothing lost, and a repeat under the same Message-ID.</summary>
public sealed class MisbehavingServersTests
{
    private const string Adviser = "adviser@example.org";

    private static readonly (string Awaited, string Answer)[] Acceptance = [("MAIL FROM", "250 ok"), ("RCPT TO", "250 ok"), ("DATA", "354 go on"), (WholeMail, "250 2.0.0 kept")];

    /// <summary>Where the line breaks or falls silent, and what the queue makes of it.</summary>
    public static TheoryData<string, string, string> Points => new()
    {
        { "", HangUp, "refused-for-now" },
        { "", Silence, "refused-for-now" },
        { "", "554 5.3.2 no service here", "refused-for-now" },
        { "EHLO", HangUp, "refused-for-now" },
        { "EHLO", Silence, "refused-for-now" },
        { "MAIL FROM", HangUp, "refused-for-now" },
        { "MAIL FROM", Silence, "refused-for-now" },
        { "MAIL FROM", "421 4.3.2 closing", "refused-for-now" },
        { "RCPT TO", HangUp, "refused-for-now" },
        { "RCPT TO", Silence, "refused-for-now" },
        { "RCPT TO", "450 4.2.1 busy", "refused-for-now" },
        { "RCPT TO", "550 5.1.1 no such user", "refused-for-good" },
        { "DATA", HangUp, "refused-for-now" },
        { "DATA", Silence, "refused-for-now" },
        { "DATA", "451 4.3.0 no room", "refused-for-now" },
        { WholeMail, HangUp, "unknown" },
        { WholeMail, Silence, "unknown" },
        { WholeMail, "451 4.7.1 later", "refused-for-now" },
        { WholeMail, "554 5.6.0 not in this form", "refused-for-good" },
    };

    [Theory]
    [MemberData(nameof(Points), DisableDiscoveryEnumeration = true)]
    public async Task Wherever_it_breaks_the_outcome_has_its_name_and_the_mail_comes_later_or_is_refused_for_good(string awaited, string answer, string outcome)
    {
        await using Queue queue = await Queue.WithMailsToAsync(Adviser);
        (string Awaited, string Answer)[] all = [Greeting, Hello, .. Acceptance];
        (string, string)[] broken = [.. all.TakeWhile(step => step.Awaited != awaited), (awaited, answer)];
        // An attempt connects up to three times.
        await using (var server = new ScriptedMailServer([.. Enumerable.Repeat((IReadOnlyList<(string, string)>)broken, 3)]))
        {
            DeliveryReport report = await queue.DeliverAsync(Options(server.Port));
            Assert.Equal(0, report.Delivered);
            Assert.Single(report.Losses.Concat(report.Troubles));
        }

        UndeliveredMessage kept = Assert.Single((await queue.UndeliveredAsync()).Values);
        Assert.Equal((outcome, 1, Queue.Id(1)), (kept.LastOutcome, kept.Attempts, kept.MessageId));
        Assert.Equal(outcome == "refused-for-good", kept.NextAttempt is null);

        queue.Time.Advance(TimeSpan.FromHours(1));
        await using var good = new ScriptedMailServer(UpTo(Acceptance));
        DeliveryReport again = await queue.DeliverAsync(Options(good.Port));
        Assert.Equal(outcome == "refused-for-good" ? 0 : 1, again.Delivered);
        Assert.Equal(outcome == "refused-for-good" ? 0 : 1, good.Heard.Count(line => line == $"Message-Id: <{Queue.Id(1)}>"));
        Assert.Equal(0, (await queue.DeliverAsync(Options(LoopbackMailServer.FreePort()))).Delivered);
    }

    [Fact]
    public async Task One_refused_address_of_many_costs_the_others_nothing()
    {
        await using Queue queue = await Queue.WithMailsToAsync("a@example.org", "gone@example.org", "b@example.org", "c@example.org");
        await using var server = new ScriptedMailServer(UpTo([.. Acceptance, ("MAIL FROM", "250 ok"), ("RCPT TO", "550 5.1.1 no such user"), ("RSET", "250 ok"), .. Acceptance, .. Acceptance]));

        DeliveryReport report = await queue.DeliverAsync(Options(server.Port));

        Assert.Equal(3, report.Delivered);
        Assert.Contains("to gone@example.org was refused for good: 550 5.1.1 no such user", Assert.Single(report.Losses), StringComparison.Ordinal);
        Assert.Equal([Queue.Id(2)], (await queue.UndeliveredAsync()).Keys);
        Assert.Equal(1, server.Heard.Count(line => line.StartsWith("EHLO", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task Many_full_mailboxes_are_no_sign_that_the_server_is_down()
    {
        await using Queue queue = await Queue.WithMailsToAsync([.. Enumerable.Range(1, 5).Select(number => $"full{number}@example.org"), "a@example.org"]);
        (string, string)[] full = [("MAIL FROM", "250 ok"), ("RCPT TO", "452 4.2.2 mailbox full"), ("RSET", "250 ok")];
        await using var server = new ScriptedMailServer(UpTo([.. Enumerable.Repeat(full, 5).SelectMany(each => each), .. Acceptance]));

        DeliveryReport report = await queue.DeliverAsync(Options(server.Port));

        Assert.Equal((1, 5), (report.Delivered, report.Troubles.Count));
    }

    [Fact]
    public async Task A_server_that_is_down_is_left_alone_after_three_mails_and_the_others_keep_their_turn()
    {
        await using Queue queue = await Queue.WithMailsToAsync([.. Enumerable.Range(1, 30).Select(number => $"reader{number}@example.org")]);

        DeliveryReport report = await queue.DeliverAsync(Options(LoopbackMailServer.FreePort()));

        Assert.Equal((0, 3, 30), (report.Delivered, report.Troubles.Count, report.Waiting));
        IReadOnlyDictionary<string, UndeliveredMessage> kept = await queue.UndeliveredAsync();
        Assert.Equal(3, kept.Values.Count(each => each.Attempts == 1));
        Assert.Equal(27, kept.Values.Count(each => each.Attempts == 0));
    }

    [Fact]
    public async Task Without_TLS_nothing_is_handed_over_and_nothing_lost()
    {
        await using Queue queue = await Queue.WithMailsToAsync(Adviser);
        await using var server = new ScriptedMailServer([Greeting, ("EHLO", "250-localhost\r\n250 AUTH PLAIN LOGIN")]);

        await queue.DeliverAsync(Options(server.Port, SmtpSecurity.StartTls));

        UndeliveredMessage kept = Assert.Single((await queue.UndeliveredAsync()).Values);
        Assert.Equal("refused-for-now", kept.LastOutcome);
        Assert.Contains("offers no STARTTLS", kept.LastWords, StringComparison.Ordinal);
        Assert.DoesNotContain(server.Heard, line => line.StartsWith("AUTH", StringComparison.Ordinal) || line.StartsWith("MAIL", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_bad_certificate_hands_over_nothing_and_loses_nothing()
    {
        using X509Certificate2 certificate = TestCertificate.SelfSigned();
        await using Queue queue = await Queue.WithMailsToAsync(Adviser);
        await using var server = new LoopbackMailServer(certificate);

        await queue.DeliverAsync(Options(server.Port, SmtpSecurity.StartTls));

        UndeliveredMessage kept = Assert.Single((await queue.UndeliveredAsync()).Values);
        Assert.Equal("refused-for-now", kept.LastOutcome);
        Assert.Contains("was not trusted", kept.LastWords, StringComparison.Ordinal);
        Assert.Empty(server.Received);
    }

    private static SmtpOptions Options(int port, SmtpSecurity security = SmtpSecurity.None) => new()
    {
        Host = "127.0.0.1",
        Port = port,
        Security = security,
        From = "windows@example.org",
        Timeout = TimeSpan.FromSeconds(30),
        User = security == SmtpSecurity.None ? "" : LoopbackMailServer.User,
        Password = security == SmtpSecurity.None ? "" : LoopbackMailServer.Password,
    };
}
