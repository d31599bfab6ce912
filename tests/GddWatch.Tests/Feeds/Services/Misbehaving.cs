using GddWatch.Feeds.Services;
using Xunit;

namespace GddWatch.Tests.Feeds.Services;

/// <summary>Asks a bad service beside a good one.</summary>
internal static class Misbehaving
{
    /// <summary>The bad one is refused with a fault that says so; the good one is read as if nothing were. Gives what the fault shows.</summary>
    public static async Task<string> IsRefusedAsync(Func<Asked, byte[]> answer, string problem)
    {
        await using WeatherHost host = new(answer);
        return await IsRefusedBesideAGoodOneAsync(host, problem);
    }

    /// <inheritdoc cref="IsRefusedAsync"/>
    public static async Task<string> IsRefusedBesideAGoodOneAsync(WeatherHost bad, string problem)
    {
        await using WeatherHost good = new(asked => WeatherHost.Json(OpenMeteoText.For(asked)));
        using ServiceDesk desk = new();
        IReadOnlyList<ServiceReading> readings = await desk.FetchAsync(
            ServiceDesk.Request(ServiceKind.OpenMeteo, bad.Address), ServiceDesk.Request(ServiceKind.OpenMeteo, good.Address, site: ServiceDesk.Site("other")));

        Assert.Equal((3, 16), (readings[1].Observed!.Count, readings[1].Forecast!.Days.Count));
        Assert.Empty(readings[1].Told());
        return readings[0].Refused(problem).Found ?? "";
    }
}
