using System.Net;
using GddWatch.Feeds.Services.Fetching;
using Xunit;

namespace GddWatch.Tests.Feeds.Services;

/// <summary>Which addresses are of the public internet. Ranges: the registries of special-purpose addresses, RFC 6890 (MEMORY).</summary>
public sealed class PublicAddressTests
{
    [Theory]
    [InlineData("8.8.8.8", true)]
    [InlineData("172.15.255.255", true)]
    [InlineData("172.16.0.1", false)]
    [InlineData("172.32.0.1", true)]
    [InlineData("10.1.2.3", false)]
    [InlineData("192.168.1.1", false)]
    [InlineData("100.64.0.1", false)]
    [InlineData("127.0.0.2", false)]
    [InlineData("169.254.169.254", false)]
    [InlineData("0.0.0.0", false)]
    [InlineData("224.0.0.1", false)]
    [InlineData("255.255.255.255", false)]
    [InlineData("2606:4700::1111", true)]
    [InlineData("::1", false)]
    [InlineData("::", false)]
    [InlineData("fe80::1", false)]
    [InlineData("fd00::1", false)]
    [InlineData("::ffff:10.0.0.1", false)]
    [InlineData("::ffff:8.8.8.8", true)]
    [InlineData("64:ff9b::a00:1", false)]
    [InlineData("2002:a00:1::", false)]
    public void Private_and_special_ranges_are_not_public(string address, bool isPublic) => Assert.Equal(isPublic, PublicAddress.Is(IPAddress.Parse(address)));
}
