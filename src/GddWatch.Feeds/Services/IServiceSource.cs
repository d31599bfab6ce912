namespace GddWatch.Feeds.Services;

/// <summary>Asks one kind of service.</summary>
internal interface IServiceSource
{
    /// <summary>Which one.</summary>
    ServiceKind Kind { get; }

    /// <summary>One reading for each request, in any order. A bad source is a fault, never an exception.</summary>
    Task<IReadOnlyList<ServiceReading>> FetchAsync(IReadOnlyList<ServiceRequest> requests, CancellationToken stop);
}
