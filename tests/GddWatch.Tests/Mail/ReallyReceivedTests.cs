using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using GddWatch.Tests.Commands;
using MimeKit;
using Xunit;

namespace GddWatch.Tests.Mail;

/// <summary>Mails sent by the worker through Postfix, delivered by Dovecot and read back from the mailbox as their reader's program would.</summary>
public sealed class ReallyReceivedTests(PostfixAndDovecot servers) : IClassFixture<PostfixAndDovecot>
{
    private const string Somebody = "Zoë Välikangas, Mäharbeiten";

    private static readonly DateOnly Day = new(2025, 4, 25);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_mails_of_a_pass_arrive_whole_and_a_mailbox_that_is_not_there_costs_the_others_nothing()
    {
        PostfixAndDovecot.Require();
        using Workshop workshop = LawnFor("adviser@example.org", "gone@example.org", "partner@example.org");

        Ran ran = await workshop.RunLettingTimePassAsync("watch", "--once");

        Assert.Equal(1, ran.Code);
        Assert.Contains("to gone@example.org, tried once; 550 5.1.1", (await workshop.RunAsync("status")).Output, StringComparison.Ordinal);
        Assert.DoesNotContain(PostfixAndDovecot.Password, ran.Output + ran.Error, StringComparison.Ordinal);
        MimeMessage mail = Assert.Single(await servers.ReadAsync("adviser@example.org", 1, Stop));
        Assert.Equal(mail.Subject, Assert.Single(await servers.ReadAsync("partner@example.org", 1, Stop)).Subject);
        IsAsSent(mail);

        // Another pass sends nothing again: neither what arrived nor what was refused for good.
        await workshop.RunLettingTimePassAsync("watch", "--once");
        Assert.Single(await servers.ReadAsync("adviser@example.org", 1, Stop));
    }

    private static void IsAsSent(MimeMessage mail)
    {
        Assert.StartsWith("Große Wiese: Spring pre-emergent window open since", mail.Subject, StringComparison.Ordinal);
        MailboxAddress to = Assert.Single(mail.To.Mailboxes);
        Assert.Equal((Somebody, "adviser@example.org"), (to.Name, to.Address));
        Assert.Equal("Rasen im Süden", Assert.Single(mail.From.Mailboxes).Name);
        Assert.Equal("operator@example.org", Assert.Single(mail.ReplyTo.Mailboxes).Address);
        Assert.Equal("auto-generated", mail.Headers["Auto-Submitted"]);
        Assert.Equal("<rasen-im-s-den.example.org>", mail.Headers[HeaderId.ListId]);
        Assert.Equal("<mailto:operator@example.org?subject=unsubscribe%20Rasen%20im%20S%C3%BCden>", mail.Headers[HeaderId.ListUnsubscribe]);
        Assert.Matches("^[0-9-]+\\.opened\\.spring-pre-emergent\\.lawn\\.[0-9a-f]{16}@example\\.org$", mail.MessageId);
        // The day of the pass, in the region's own time.
        Assert.Equal((Day.AddDays(1).ToDateTime(default), TimeSpan.FromHours(-5)), (mail.Date.Date, mail.Date.Offset));
        Assert.Contains("Große Wiese", WebUtility.HtmlDecode(mail.HtmlBody), StringComparison.Ordinal);
        Assert.Contains("°F", mail.TextBody, StringComparison.Ordinal);
        // What the servers passed on is what was composed: no line was cut, no letter lost.
        Assert.All(mail.BodyParts.OfType<TextPart>().Where(part => part.IsPlain || part.IsHtml), part => Assert.Equal("utf-8", part.ContentType.Charset));
    }

    private Workshop LawnFor(params string[] addresses)
    {
        Workshop workshop = Workshop.WithOneLawn(SmoothWeather.Csv(new DateOnly(2012, 1, 1), Day));
        workshop.PutClockTo(new DateTimeOffset(Day.AddDays(1).ToDateTime(new TimeOnly(12, 0)), TimeSpan.Zero));
        workshop.WriteRegion(recipients: string.Join(' ', addresses));
        string region = Path.Combine(workshop.Config, "region.yaml");
        File.WriteAllText(region, File.ReadAllText(region)
            .Replace("name: Test Region", "name: Rasen im Süden", StringComparison.Ordinal)
            .Replace("name: The Lawn", "name: Große Wiese", StringComparison.Ordinal)
            .Replace("address: adviser@example.org", $"name: \"{Somebody}\", address: adviser@example.org", StringComparison.Ordinal));
        File.WriteAllText(Path.Combine(workshop.Folder, "password"), PostfixAndDovecot.Password);
        using X509Certificate2 certificate = X509CertificateLoader.LoadCertificateFromFile(servers.CertificateFile);
        File.WriteAllText(Path.Combine(workshop.Config, "appsettings.json"), $$"""
            {
              "Mail": {
                "Host": "localhost", "Port": "{{servers.SmtpPort}}", "Security": "starttls", "User": "{{PostfixAndDovecot.User}}", "PasswordFile": "password",
                "From": "{{PostfixAndDovecot.User}}", "PinnedCertificateSha256": "{{certificate.GetCertHashString(HashAlgorithmName.SHA256)}}"
              }
            }
            """);
        return workshop;
    }
}
