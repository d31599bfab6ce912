using System.Globalization;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Weather;
using GddWatch.Feeds.Faults;
using GddWatch.Feeds.Services;
using GddWatch.Feeds.Services.Fetching;
using GddWatch.Tests.Loopback;
using Xunit;

namespace GddWatch.Tests.Feeds.Services;

/// <summary>Asks services for invented sites, by a clock that goes on only while somebody waits between attempts.</summary>
internal sealed class ServiceDesk : IDisposable
{
    public static readonly DateOnly Today = new(2026, 5, 20);

    // Longer than every wait between attempts, so that the clock does not run out on an attempt.
    private static readonly TimeSpan Attempt = TimeSpan.FromHours(1);

    private readonly WeatherServices services;

    public ServiceDesk(DateTimeOffset? now = null, FetchLimits? limits = null, ReplyMemory? memory = null)
    {
        Clock = new WatchedTime();
        Clock.SetUtcNow(now ?? new DateTimeOffset(2026, 5, 20, 15, 0, 0, TimeSpan.Zero));
        services = WeatherServices.Create(new ServiceClient("operator@example.org", "1.2.3"), Clock, memory, limits ?? new FetchLimits { Attempt = Attempt });
    }

    public WatchedTime Clock { get; }

    public static CancellationToken Stop => TestContext.Current.CancellationToken;

    public static Site Site(string id = "green", double latitude = 41.6, double longitude = -93.3, string zone = "America/Chicago") => new()
    {
        Id = id,
        Name = id,
        Latitude = latitude,
        Longitude = longitude,
        ElevationM = 250,
        TimeZone = zone,
        Turf = [TurfType.CoolSeason],
    };

    public static ServiceRequest Request(ServiceKind kind, Uri address, int pastDays = 3, Site? site = null, string? station = null, DateOnly? today = null) => new(
        site ?? Site(), new ServiceFeedDefinition { Kind = kind, BaseAddress = address, Station = station }, (today ?? Today).AddDays(-pastDays), today ?? Today);

    public async Task<ServiceReading> FetchAsync(ServiceRequest request) => Assert.Single(await FetchAsync([request]));

    /// <summary>Asks, and lets the clock go on by each wait between attempts.</summary>
    public async Task<IReadOnlyList<ServiceReading>> FetchAsync(params ServiceRequest[] requests)
    {
        Task<IReadOnlyList<ServiceReading>> fetching = services.FetchAsync(requests, Stop);
        using CancellationTokenSource done = CancellationTokenSource.CreateLinkedTokenSource(Stop);
        Task waiting = LetWaitsPassAsync(done.Token);
        try
        {
            return await fetching;
        }
        finally
        {
            await done.CancelAsync();
            await waiting;
        }
    }

    /// <summary>Asks without touching the clock.</summary>
    public Task<IReadOnlyList<ServiceReading>> BeginAsync(params ServiceRequest[] requests) => services.FetchAsync(requests, Stop);

    public void Dispose() => services.Dispose();

    private async Task LetWaitsPassAsync(CancellationToken stop)
    {
        try
        {
            while (true) Clock.Advance(await Clock.NextWaitShorterThanAsync(TimeSpan.FromMinutes(10), stop));
        }
        catch (OperationCanceledException)
        {
            // Nobody waits any more.
        }
    }
}

internal static class ServiceReadings
{
    public static double? At(this DailySeries? series, string day, WeatherVariable variable = WeatherVariable.MinimumAirC)
    {
        DateOnly date = DateOnly.ParseExact(day, "yyyy-MM-dd", CultureInfo.InvariantCulture);
        if (series is null || !series.Holds(date) || !series.Has(variable)) return null;
        double value = series.Column(variable)[series.IndexOf(date)];
        return double.IsNaN(value) ? null : value;
    }

    public static double? MaximumAt(this DailySeries? series, string day) => series.At(day, WeatherVariable.MaximumAirC);

    public static double? RainAt(this DailySeries? series, string day) => series.At(day, WeatherVariable.PrecipitationMm);

    /// <summary>The faults but the remark that days are computed by models.</summary>
    public static IReadOnlyList<Fault> Told(this ServiceReading reading) => [.. reading.Faults.Where(fault => !fault.Problem.Contains("computed by weather models", StringComparison.Ordinal))];

    /// <summary>The reading has nothing, and one fault says why, what was expected and what happens now.</summary>
    public static Fault Refused(this ServiceReading reading, string problem)
    {
        Assert.Null(reading.Observed);
        Assert.Null(reading.Forecast);
        Fault fault = Assert.Single(reading.Faults);
        Assert.Equal(FaultSeverity.Refused, fault.Severity);
        Assert.Contains(problem, fault.Problem, StringComparison.Ordinal);
        Assert.EndsWith("It is asked again at the next pass, and the days already kept stay.", fault.Accepted, StringComparison.Ordinal);
        return fault;
    }
}
