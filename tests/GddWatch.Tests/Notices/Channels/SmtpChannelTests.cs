using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using GddWatch.Notices;
using GddWatch.Notices.Channels;
using GddWatch.Tests.Loopback;
using GddWatch.Tests.Notices.Composing;
using MimeKit;
using Xunit;

namespace GddWatch.Tests.Notices.Channels;

/// <summary>Against a real mail server on this machine: TLS, login and its answers.</summary>
public sealed class SmtpChannelTests : IDisposable
{
    private readonly X509Certificate2 certificate = TestCertificate.SelfSigned();
    private readonly WatchedTime time = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => certificate.Dispose();

    [Theory]
    [InlineData(SmtpSecurity.StartTls)]
    [InlineData(SmtpSecurity.ImplicitTls)]
    public async Task A_mail_arrives_whole_over_tls_after_a_login(SmtpSecurity security)
    {
        await using var server = new LoopbackMailServer(certificate, tlsFromTheStart: security == SmtpSecurity.ImplicitTls);
        await using var channel = Channel(server, security: security);
        MimeMessage mail = Mails.Make();

        Assert.IsType<DeliveryOutcome.Accepted>(await channel.DeliverAsync(mail, Stop));

        MimeMessage received = Assert.Single(server.Received);
        Assert.Equal(mail.MessageId, received.MessageId);
        Assert.Equal(mail.TextBody, received.TextBody);
        Assert.Equal(mail.HtmlBody, received.HtmlBody);
        Assert.Equal("Ada Väinölä", Assert.Single(received.To.Mailboxes).Name);
        Assert.Equal(Composers.BytesOf(mail), Composers.BytesOf(received));
    }

    [Fact]
    public async Task Many_mails_share_one_connection()
    {
        await using var server = new LoopbackMailServer(certificate);
        await using var channel = Channel(server);

        for (int number = 0; number < 10; number++) Assert.IsType<DeliveryOutcome.Accepted>(await channel.DeliverAsync(Mails.Make($"{number}@example.org"), Stop));

        Assert.Equal(10, server.Received.Count);
        Assert.Equal(1, server.Sessions);
    }

    [Fact]
    public async Task A_wrong_password_is_for_now_and_is_not_repeated_in_words()
    {
        await using var server = new LoopbackMailServer(certificate);
        await using var channel = Channel(server, password: "a wrong secret");

        var refused = Assert.IsType<DeliveryOutcome.RefusedForNow>(await channel.DeliverAsync(Mails.Make(), Stop));

        Assert.Contains("Check the user name and the password", refused.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("a wrong secret", refused.ToString(), StringComparison.Ordinal);
        Assert.Empty(server.Received);
        Assert.Equal(1, server.Sessions);
    }

    [Fact]
    public async Task A_certificate_that_nobody_vouches_for_is_refused()
    {
        await using var server = new LoopbackMailServer(certificate);
        await using var channel = Channel(server, pin: "");

        var refused = Assert.IsType<DeliveryOutcome.RefusedForNow>(await channel.DeliverAsync(Mails.Make(), Stop));

        Assert.Contains("was not trusted", refused.Words, StringComparison.Ordinal);
        Assert.Contains(Sha256(certificate), refused.Words, StringComparison.Ordinal);
        Assert.Empty(server.Received);
    }

    [Fact]
    public async Task Another_certificate_than_the_pinned_one_is_refused()
    {
        using X509Certificate2 other = TestCertificate.SelfSigned();
        await using var server = new LoopbackMailServer(other);
        await using var channel = Channel(server);

        var refused = Assert.IsType<DeliveryOutcome.RefusedForNow>(await channel.DeliverAsync(Mails.Make(), Stop));

        Assert.Contains("not the pinned one", refused.Words, StringComparison.Ordinal);
        Assert.Empty(server.Received);
    }

    [Fact]
    public async Task A_private_authority_of_the_configured_file_is_trusted_for_its_own_server_alone()
    {
        string file = Path.GetTempFileName();
        try
        {
            using X509Certificate2 other = TestCertificate.SelfSigned();
            await File.WriteAllTextAsync(file, certificate.ExportCertificatePem(), Stop);
            await using var own = new LoopbackMailServer(certificate);
            await using var foreign = new LoopbackMailServer(other);
            await using var toOwn = Channel(own, pin: "", authorities: file);
            await using var toForeign = Channel(foreign, pin: "", authorities: file);

            Assert.IsType<DeliveryOutcome.Accepted>(await toOwn.DeliverAsync(Mails.Make(), Stop));
            Assert.Contains("was not trusted", Assert.IsType<DeliveryOutcome.RefusedForNow>(await toForeign.DeliverAsync(Mails.Make(), Stop)).Words, StringComparison.Ordinal);
            Assert.Empty(foreign.Received);
        }
        finally
        {
            File.Delete(file);
        }
    }

    [Fact]
    public async Task A_mail_beyond_the_limit_of_a_minute_waits()
    {
        await using var server = new LoopbackMailServer(certificate);
        await using var channel = Channel(server, mostPerMinute: 2);
        await channel.DeliverAsync(Mails.Make(), Stop);
        await channel.DeliverAsync(Mails.Make("two@example.org"), Stop);

        Task<DeliveryOutcome> third = channel.DeliverAsync(Mails.Make("three@example.org"), Stop);
        Assert.False(third.IsCompleted);
        Assert.Equal(2, server.Received.Count);
        time.Advance(TimeSpan.FromMinutes(1));

        Assert.IsType<DeliveryOutcome.Accepted>(await third);
    }

    [Fact]
    public async Task A_refusal_for_now_carries_the_servers_words_and_the_next_mail_goes_over_the_same_line()
    {
        await using var server = new LoopbackMailServer(certificate);
        server.Answers.Enqueue(LoopbackMailServer.Refusal(451, "4.7.1 come back later"));
        await using var channel = Channel(server);

        var refused = Assert.IsType<DeliveryOutcome.RefusedForNow>(await channel.DeliverAsync(Mails.Make(), Stop));

        Assert.Contains("451 4.7.1 come back later", refused.Words, StringComparison.Ordinal);
        Assert.IsType<DeliveryOutcome.Accepted>(await channel.DeliverAsync(Mails.Make(), Stop));
        Assert.Equal(1, server.Sessions);
    }

    [Fact]
    public async Task A_refusal_of_the_content_is_for_good()
    {
        await using var server = new LoopbackMailServer(certificate);
        server.Answers.Enqueue(LoopbackMailServer.Refusal(554, "5.6.0 not in this form"));
        await using var channel = Channel(server);

        Assert.Contains(
            "554 5.6.0 not in this form", Assert.IsType<DeliveryOutcome.RefusedForGood>(await channel.DeliverAsync(Mails.Make(), Stop)).Words, StringComparison.Ordinal);
    }

    private SmtpChannel Channel(LoopbackMailServer server, string? pin = null, string password = LoopbackMailServer.Password, SmtpSecurity security = SmtpSecurity.StartTls, string authorities = "", int mostPerMinute = 0) => new(
        new SmtpOptions
        {
            Host = "127.0.0.1",
            Port = server.Port,
            Security = security,
            User = LoopbackMailServer.User,
            Password = password,
            From = "windows@example.org",
            PinnedCertificateSha256 = pin ?? Sha256(certificate),
            AuthorityFile = authorities,
            MostPerMinute = mostPerMinute,
        },
        time);

    private static string Sha256(X509Certificate2 of) => of.GetCertHashString(HashAlgorithmName.SHA256).ToLowerInvariant();
}
