using GddWatch.Feeds.Services;
using GddWatch.Feeds.Services.Fetching;
using Xunit;

namespace GddWatch.Tests.Feeds.Services;

/// <summary>How a service is asked: by whom, how often, and whether anything has changed.</summary>
public sealed class FetchMannersTests
{
    [Fact]
    public async Task A_service_that_recovers_is_read()
    {
        int asks = 0;
        await using WeatherHost host = new(asked => ++asks < 4 ? WeatherHost.Whole(503, "busy") : WeatherHost.Json(OpenMeteoText.For(asked)));
        using ServiceDesk desk = new();
        ServiceReading reading = await desk.FetchAsync(ServiceDesk.Request(ServiceKind.OpenMeteo, host.Address));

        Assert.Equal((4, 3), (asks, reading.Observed!.Count));
        Assert.Empty(reading.Told());
    }

    [Fact]
    public async Task A_wait_that_the_service_asks_for_is_kept()
    {
        int asks = 0;
        await using WeatherHost host = new(asked => ++asks == 1 ? WeatherHost.Whole(429, "", "Retry-After: 75") : WeatherHost.Json(OpenMeteoText.For(asked)));
        using ServiceDesk desk = new();
        DateTimeOffset before = desk.Clock.GetUtcNow();
        ServiceReading reading = await desk.FetchAsync(ServiceDesk.Request(ServiceKind.OpenMeteo, host.Address));

        Assert.Equal((2, TimeSpan.FromSeconds(75)), (asks, desk.Clock.GetUtcNow() - before));
        Assert.Equal(3, reading.Observed!.Count);
    }

    [Fact]
    public async Task A_wait_that_is_too_long_ends_the_asking()
    {
        int asks = 0;
        await Misbehaving.IsRefusedAsync(
            _ =>
            {
                asks++;
                return WeatherHost.Whole(429, "", "Retry-After: 3600");
            },
            "left alone for 60 minutes");
        Assert.Equal(1, asks);
    }

    [Fact]
    public async Task A_host_that_fails_for_many_sites_is_not_asked_for_the_rest_and_again_after_a_while()
    {
        bool isWell = false;
        await using WeatherHost host = new(asked => isWell ? WeatherHost.Json(OpenMeteoText.For(asked)) : WeatherHost.Whole(500, "boom"));
        using ServiceDesk desk = new(limits: new FetchLimits { Attempt = TimeSpan.FromHours(1), AtOnce = 1 });
        ServiceRequest[] requests = [.. Enumerable.Range(0, 30).Select(i => ServiceDesk.Request(ServiceKind.UsWeatherService, host.Address, site: ServiceDesk.Site($"s{i}", 30 + i)))];
        IReadOnlyList<ServiceReading> readings = await desk.FetchAsync(requests);

        Assert.InRange(host.All.Count, 10, 20);
        Assert.Equal(10, readings.TakeLast(10).Count(reading => reading.Refused("not asked for 5 minutes") is not null));
        isWell = true;
        desk.Clock.Advance(TimeSpan.FromMinutes(6));
        Assert.NotNull((await desk.FetchAsync(ServiceDesk.Request(ServiceKind.OpenMeteo, host.Address))).Observed);
    }

    [Fact]
    public async Task Who_asks_and_how_to_reach_them_is_said()
    {
        await using WeatherHost host = new(asked => WeatherHost.Json(OpenMeteoText.For(asked)));
        using ServiceDesk desk = new();
        await desk.FetchAsync(ServiceDesk.Request(ServiceKind.OpenMeteo, host.Address));

        Assert.Equal("GddWatch/1.2.3 (operator@example.org)", Assert.Single(host.All).Headers["User-Agent"]);
    }

    [Fact]
    public void What_would_break_the_User_Agent_is_left_out_of_it() =>
        Assert.Equal("GddWatch/1.0 (ab@example.org)", new ServiceClient("a\r\nb@example.org) (ü", "1.0").UserAgent);

    [Fact]
    public async Task A_reply_that_has_not_changed_is_not_sent_again()
    {
        ReplyMemory memory = new();
        await using WeatherHost host = new(asked => asked.Headers.GetValueOrDefault("If-None-Match") == "\"v1\""
            ? WeatherHost.Whole(304, "")
            : WeatherHost.Json(OpenMeteoText.For(asked), "ETag: \"v1\"", "Last-Modified: Wed, 20 May 2026 10:00:00 GMT"));
        using (ServiceDesk desk = new(memory: memory)) await desk.FetchAsync(ServiceDesk.Request(ServiceKind.OpenMeteo, host.Address));
        // As after a restart, from what was stored.
        using ServiceDesk again = new(memory: new ReplyMemory(memory.Kept));
        ServiceReading reading = await again.FetchAsync(ServiceDesk.Request(ServiceKind.OpenMeteo, host.Address));

        Assert.Equal(("\"v1\"", "Wed, 20 May 2026 10:00:00 GMT"), (host.All.Last().Headers["If-None-Match"], host.All.Last().Headers["If-Modified-Since"]));
        Assert.Equal((2, 3), (host.All.Count, reading.Observed!.Count));
    }

    [Theory]
    [InlineData(ServiceKind.OpenMeteo)]
    [InlineData(ServiceKind.NoaaDailySummaries)]
    [InlineData(ServiceKind.UsWeatherService)]
    public async Task A_reply_that_could_not_be_read_is_asked_for_in_full_the_next_time(ServiceKind kind)
    {
        await using WeatherHost host = new(_ => WeatherHost.Json("{\"cut\":", "ETag: \"v1\""));
        using ServiceDesk desk = new();
        for (int i = 0; i < 2; i++) (await desk.FetchAsync(ServiceDesk.Request(kind, host.Address, station: "USW00099999"))).Refused("not whole JSON");

        Assert.Equal(2, host.All.Count);
        Assert.All(host.All, asked => Assert.DoesNotContain("If-None-Match", asked.Headers.Keys));
    }
}
