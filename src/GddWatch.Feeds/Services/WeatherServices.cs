using GddWatch.Feeds.Services.DailySummaries;
using GddWatch.Feeds.Services.Fetching;
using GddWatch.Feeds.Services.OpenMeteo;
using GddWatch.Feeds.Services.UsWeather;

namespace GddWatch.Feeds.Services;

/// <summary>Asks open weather services for many sites in one go. One of these for the whole run of the program: it remembers which host failed and which reply was the last.</summary>
public sealed class WeatherServices : IDisposable
{
    private readonly Fetcher fetcher;
    private readonly IReadOnlyList<IServiceSource> sources;

    private WeatherServices(Fetcher fetcher)
    {
        this.fetcher = fetcher;
        sources = [new OpenMeteoSource(fetcher), new DailySummariesSource(fetcher), new UsWeatherSource(fetcher)];
    }

    /// <summary>Makes one.</summary>
    /// <param name="who">Who asks.</param>
    /// <param name="clock">The time.</param>
    /// <param name="memory">The replies that may be asked about again; null begins with none.</param>
    /// <param name="limits">How long, how often and how much is asked; null takes what is usual.</param>
    public static WeatherServices Create(ServiceClient who, TimeProvider clock, ReplyMemory? memory = null, FetchLimits? limits = null)
    {
        ArgumentNullException.ThrowIfNull(who);
        ArgumentNullException.ThrowIfNull(clock);
        return new WeatherServices(new Fetcher(who, limits ?? new FetchLimits(), clock, memory ?? new ReplyMemory()));
    }

    /// <summary>Asks for all of them, the services beside each other. Whatever goes wrong is a fault of the sites that it concerns; nothing is thrown but for the stop.</summary>
    /// <param name="requests">What is wanted.</param>
    /// <param name="stop">Stops the asking.</param>
    /// <returns>One reading for each request, in their order.</returns>
    public async Task<IReadOnlyList<ServiceReading>> FetchAsync(IReadOnlyList<ServiceRequest> requests, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(requests);
        IReadOnlyList<ServiceReading>[] fetched = await Task.WhenAll(sources.Select(source => source.FetchAsync([.. requests.Where(each => each.Feed.Kind == source.Kind)], stop)));
        // The very same objects come back; two equal requests have equal readings.
        Dictionary<ServiceRequest, ServiceReading> readings = new(ReferenceEqualityComparer.Instance as IEqualityComparer<ServiceRequest>);
        foreach (ServiceReading reading in fetched.SelectMany(each => each)) readings[reading.Request] = reading;
        return [.. requests.Select(each => readings[each])];
    }

    /// <inheritdoc/>
    public void Dispose() => fetcher.Dispose();
}
