namespace GddWatch.Feeds.Services;

/// <summary>An open weather service as configured.</summary>
public sealed record ServiceFeedDefinition : FeedDefinition
{
    /// <summary>Which service.</summary>
    public required ServiceKind Kind { get; init; }

    /// <summary>The id of the station; required for <see cref="ServiceKind.NoaaDailySummaries"/>, null for the others.</summary>
    public string? Station { get; init; }

    /// <summary>Where it is asked, ending in "/": the service's own address where nothing else was set.</summary>
    public Uri BaseAddress
    {
        get => field ?? ServiceFacts.DefaultAddress(Kind);
        init => field = value.AbsolutePath.EndsWith('/') ? value : new Uri(value.AbsoluteUri + "/");
    }

    /// <summary>The service as people call it.</summary>
    public string Name => Station is null ? ServiceFacts.Word(Kind) : $"{ServiceFacts.Word(Kind)}, station {Station}";
}
