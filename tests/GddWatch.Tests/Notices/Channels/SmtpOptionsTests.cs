using GddWatch.Notices.Channels;
using Xunit;

namespace GddWatch.Tests.Notices.Channels;

public sealed class SmtpOptionsTests
{
    [Fact]
    public void Everything_wrong_is_told_at_once()
    {
        var options = new SmtpOptions
        {
            Host = " ",
            Port = 0,
            Security = SmtpSecurity.None,
            From = "nobody",
            Password = "a quiet secret",
            Timeout = TimeSpan.Zero,
            PinnedCertificateSha256 = "12",
        };

        Assert.Equal(7, options.Validate().Count);
        Assert.DoesNotContain("a quiet secret", string.Join(' ', options.Validate()), StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => new SmtpChannel(options, TimeProvider.System));
    }

    [Theory]
    [InlineData("localhost", 0)]
    [InlineData("127.0.0.1", 0)]
    [InlineData("::1", 0)]
    [InlineData("mail.example.org", 1)]
    [InlineData("localhost.example.org", 1)]
    public void A_line_without_tls_is_accepted_to_this_machine_alone(string host, int faults) =>
        Assert.Equal(faults, new SmtpOptions { Host = host, From = "windows@example.org", Security = SmtpSecurity.None }.Validate().Count);

    [Fact]
    public void A_user_without_a_password_is_told() =>
        Assert.Contains("no password", Assert.Single(new SmtpOptions { Host = "mail.example.org", From = "windows@example.org", User = "windows" }.Validate()), StringComparison.Ordinal);

    [Fact]
    public void The_text_of_the_options_holds_no_password() =>
        Assert.Equal(
            "mail.example.org:587, StartTls, login as windows",
            new SmtpOptions { Host = "mail.example.org", User = "windows", Password = "a quiet secret" }.ToString());
}
