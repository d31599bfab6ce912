using GddWatch.Feeds.Services;
using GddWatch.Feeds.Services.Fetching;
using Xunit;

namespace GddWatch.Tests.Feeds.Services;

/// <summary>A service that misbehaves: each way ends in a fault that names it, and a good service asked in the same pass is unaffected.</summary>
public sealed class MisbehavingServiceTests
{
    [Fact]
    public async Task A_page_with_status_200_is_told_as_a_page()
    {
        string found = await Misbehaving.IsRefusedAsync(_ => WeatherHost.Whole(200, "<html>Please log in</html>", "Content-Type: text/html; charset=utf-8"), "not JSON but \"text/html\"");

        Assert.Equal("<html>Please log in</html>", found);
    }

    [Fact]
    public Task Another_character_set_is_refused() =>
        Misbehaving.IsRefusedAsync(_ => WeatherHost.Whole(200, "{}", "Content-Type: application/json; charset=iso-8859-1"), "another character set");

    [Fact]
    public Task Bytes_that_are_not_UTF_8_are_refused() =>
        Misbehaving.IsRefusedAsync(_ => WeatherHost.Whole(200, [.. "{\"timezone\":\"Zür"u8[..^3], 0xfc, .. "ich\"}"u8], "Content-Type: application/json"), "not whole JSON in UTF-8");

    [Fact]
    public Task Json_that_ends_in_the_middle_is_refused() =>
        Misbehaving.IsRefusedAsync(asked => WeatherHost.Json(OpenMeteoText.For(asked)[..300]), "not whole JSON in UTF-8");

    [Theory]
    [InlineData("[]", "for 0 places")]
    [InlineData("null", "no daily values")]
    [InlineData("""{"daily":1,"daily":2}""", "not whole JSON")]
    [InlineData("""{"daily_units":{},"daily":{"time":[]}}""", "km from the site")]
    [InlineData("\ud83d", "not whole JSON")]
    public Task Json_that_is_something_else_is_refused(string json, string problem) => Misbehaving.IsRefusedAsync(_ => WeatherHost.Json(json), problem);

    [Fact]
    public async Task A_body_that_breaks_off_is_asked_for_again_and_then_told()
    {
        int asks = 0;
        await using WeatherHost host = new(async (asked, stream, stop) =>
        {
            asks++;
            await stream.WriteAsync(WeatherHost.Json(OpenMeteoText.For(asked)).AsMemory(0, 600), stop);
            return false;
        });
        await Misbehaving.IsRefusedBesideAGoodOneAsync(host, "broke off before its end");
        Assert.Equal(4, asks);
    }

    [Fact]
    public async Task A_service_that_is_too_slow_is_left_after_its_time()
    {
        TaskCompletionSource heard = new(TaskCreationOptions.RunContinuationsAsynchronously);
        await using WeatherHost host = new(async (_, stream, stop) =>
        {
            // A beginning, so that it is the body that never comes.
            await stream.WriteAsync("HTTP/1.1 200 OK\r\nContent-Type: application/json\r\nContent-Length: 100\r\n\r\n{"u8.ToArray(), stop);
            heard.TrySetResult();
            await Task.Delay(Timeout.Infinite, stop);
            return false;
        });
        using ServiceDesk desk = new(limits: new FetchLimits { Retries = 0, Attempt = TimeSpan.FromSeconds(20) });
        Task<IReadOnlyList<ServiceReading>> fetching = desk.BeginAsync(ServiceDesk.Request(ServiceKind.OpenMeteo, host.Address));
        await heard.Task;
        desk.Clock.Advance(TimeSpan.FromSeconds(21));

        Assert.Single(await fetching).Refused("did not answer in full within 20 s");
    }

    [Fact]
    public Task Errors_of_its_own_without_end_are_told() => Misbehaving.IsRefusedAsync(_ => WeatherHost.Whole(500, "boom"), "error of its own (HTTP 500)");

    [Fact]
    public async Task A_certificate_that_nobody_vouches_for_is_not_trusted()
    {
        await using WeatherHost host = new((_, _, _) => Task.FromResult(false), isTls: true);
        await Misbehaving.IsRefusedBesideAGoodOneAsync(host, "certificate is not one that this machine trusts");
        Assert.Empty(host.All);
    }

    [Fact]
    public async Task Nobody_at_the_address_is_told()
    {
        Uri gone;
        await using (WeatherHost host = new(_ => [])) gone = host.Address;
        using ServiceDesk desk = new();

        (await desk.FetchAsync(ServiceDesk.Request(ServiceKind.OpenMeteo, gone))).Refused("nobody answers at its address");
    }

    [Fact]
    public async Task To_be_stopped_is_the_only_thing_that_is_thrown()
    {
        TaskCompletionSource heard = new(TaskCreationOptions.RunContinuationsAsynchronously);
        await using WeatherHost host = new(async (_, _, stop) =>
        {
            heard.TrySetResult();
            await Task.Delay(Timeout.Infinite, stop);
            return false;
        });
        using WeatherServices services = WeatherServices.Create(new ServiceClient("operator@example.org", "1"), TimeProvider.System);
        using CancellationTokenSource stop = new();
        Task fetching = services.FetchAsync([ServiceDesk.Request(ServiceKind.OpenMeteo, host.Address)], stop.Token);
        await heard.Task;
        await stop.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => fetching);
    }
}
