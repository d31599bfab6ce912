using GddWatch.Configuration.Reading;
using Xunit;

namespace GddWatch.Tests.Configuration;

public sealed class MailAddressTests
{
    [Theory]
    [InlineData("adviser@example.org")]
    [InlineData("first.last+lawns@mail.example.org")]
    [InlineData("o'neill@example.org")]
    public void An_address_that_mail_can_reach_is_taken(string address) => Assert.True(MailAddress.IsPlausible(address));

    [Theory]
    [InlineData("")]
    [InlineData("adviser")]
    [InlineData("@example.org")]
    [InlineData("adviser@")]
    [InlineData("adviser@example")]
    [InlineData("adviser@.org")]
    [InlineData("adviser@example..org")]
    [InlineData("adviser@example.org.")]
    [InlineData("ad viser@example.org")]
    [InlineData("a@b@example.org")]
    [InlineData("The adviser <adviser@example.org>")]
    [InlineData("adviser@example.org, other@example.org")]
    [InlineData("adviser@example.org\r\nBcc: other@example.org")]
    [InlineData("adviser@exam_ple.org>")]
    public void An_address_that_would_bounce_or_smuggle_is_refused(string address) => Assert.False(MailAddress.IsPlausible(address));
}
