using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Treatments;
using GddWatch.Feeds;

namespace GddWatch.Configuration;

/// <summary>What people have written down to be watched, read and checked.</summary>
public sealed record WatchConfiguration
{
    /// <summary>The region with its sites and people.</summary>
    public required Region Region { get; init; }

    /// <summary>The treatments, in the order of the file.</summary>
    public required IReadOnlyList<Treatment> Treatments { get; init; }

    /// <summary>What is named as too early, in the order of the file.</summary>
    public IReadOnlyList<NotYet> NotYet { get; init; } = [];

    /// <summary>Each site's feeds by its id, in order of preference; paths are ready to open.</summary>
    public required IReadOnlyDictionary<string, IReadOnlyList<FeedDefinition>> Feeds { get; init; }

    /// <summary>The folder that holds the configuration folder; relative paths in the files start here.</summary>
    public required string BaseFolder { get; init; }

    /// <summary>The folder of the mail templates.</summary>
    public required string MailTemplatesFolder { get; init; }

    /// <summary>SHA-256 in hexadecimal over the bytes of both files: differs whenever either was edited.</summary>
    public required string Fingerprint { get; init; }

    /// <summary>
    /// SHA-256 in hexadecimal over what judging depends on: the treatments without their sentences, and the places, turf, soil and feeds of the sites.
    /// A new recipient, a new sentence or a comment leaves it as it was.
    /// </summary>
    public required string JudgingFingerprint { get; init; }
}
