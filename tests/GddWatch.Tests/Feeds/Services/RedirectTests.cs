using GddWatch.Feeds.Services;
using Xunit;

namespace GddWatch.Tests.Feeds.Services;

/// <summary>Where a request may go, and where not.</summary>
public sealed class RedirectTests
{
    [Theory]
    [InlineData("file:///etc/passwd", "another way of asking")]
    [InlineData("https://127.0.0.1/", "another way of asking")]
    [InlineData("http://10.0.0.1/", "to itself alone")]
    [InlineData("http://169.254.169.254/latest/", "to itself alone")]
    [InlineData("http://127.0.0.1:1/", "to itself alone")]
    [InlineData("http://weather.example.org/", "to itself alone")]
    [InlineData("/again", "sent on too often")]
    [InlineData("", "not an address")]
    public async Task A_redirection_is_not_followed_to_where_it_must_not_lead(string target, string problem) =>
        Assert.Equal(target, await Misbehaving.IsRefusedAsync(_ => WeatherHost.Whole(302, "", $"Location: {target}"), problem));

    [Fact]
    public async Task A_redirection_to_the_same_host_is_followed()
    {
        await using WeatherHost host = new(asked => asked.Path == "/v1/forecast"
            ? WeatherHost.Whole(301, "", $"Location: /v2/forecast?{asked.Target.Split('?')[1]}")
            : WeatherHost.Json(OpenMeteoText.For(asked)));
        using ServiceDesk desk = new();

        Assert.Equal(3, (await desk.FetchAsync(ServiceDesk.Request(ServiceKind.OpenMeteo, host.Address))).Observed!.Count);
        Assert.Equal(["/v1/forecast", "/v2/forecast"], host.All.Select(each => each.Path));
    }

    [Fact]
    public async Task Without_https_another_machine_is_not_asked()
    {
        using ServiceDesk desk = new();

        (await desk.FetchAsync(ServiceDesk.Request(ServiceKind.OpenMeteo, new Uri("http://weather.example.org/")))).Refused("The address is not https");
    }

    [Fact]
    public async Task A_host_in_a_private_network_is_not_asked()
    {
        using ServiceDesk desk = new();

        (await desk.FetchAsync(ServiceDesk.Request(ServiceKind.OpenMeteo, new Uri("https://192.168.0.1/")))).Refused("leads into a private network");
    }
}
