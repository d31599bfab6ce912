namespace GddWatch.Storage;

/// <summary>What a pass leaves behind: kept as a whole or not at all.</summary>
public sealed record PassResult
{
    /// <summary>The day as of which was judged.</summary>
    public required DateOnly Day { get; init; }

    /// <summary>The instant of the pass; in a replay, the replayed one. Messages are queued as of it.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>The fingerprint of the configuration that judged.</summary>
    public required string Configuration { get; init; }

    /// <summary>The ids of the sites that were judged.</summary>
    public required IReadOnlyList<string> Sites { get; init; }

    /// <summary>Their windows; what was kept of the same window before is replaced.</summary>
    public required IReadOnlyList<KeptWindow> Windows { get; init; }

    /// <summary>The messages, in the order in which they are to be delivered.</summary>
    public IReadOnlyList<QueuedMessage> Messages { get; init; } = [];

    /// <summary>The Message-IDs of mails that are withdrawn since others take their place, or nobody is there for them any more.</summary>
    public IReadOnlyCollection<string> Withdrawn { get; init; } = [];

    /// <summary>Addresses whose refusals are forgotten: they are tried again, or nobody is told there any more.</summary>
    public IReadOnlyCollection<string> Forgiven { get; init; } = [];

    /// <summary>Values of the region to keep along, such as the fingerprint of the configuration.</summary>
    public IReadOnlyDictionary<string, string> RegionValues { get; init; } = System.Collections.Frozen.FrozenDictionary<string, string>.Empty;
}
