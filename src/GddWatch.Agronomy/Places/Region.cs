using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Places;

/// <summary>What one service watches.</summary>
public sealed record Region
{
    /// <summary>The name that people read.</summary>
    public required string Name { get; init; }

    /// <summary>IANA name of the time zone of the region's day.</summary>
    public required string TimeZone { get; init; }

    /// <summary>The units that people read.</summary>
    public required ReadersUnits Units { get; init; }

    /// <summary>A sentence that stands at the foot of every mail and table, such as that a region is invented; may be empty.</summary>
    public string Remark { get; init; } = "";

    /// <summary>The sites, in the order of the file.</summary>
    public required IReadOnlyList<Site> Sites { get; init; }

    /// <summary>The people who are told.</summary>
    public required IReadOnlyList<Recipient> Recipients { get; init; }

    /// <summary>The address of the person who runs the service; messages about the service itself go there.</summary>
    public required string OperatorAddress { get; init; }

    /// <summary>Local law.</summary>
    public IReadOnlyList<LocalRule> Rules { get; init; } = [];

    /// <summary>The local rules about a kind of work at a site.</summary>
    public IEnumerable<LocalRule> RulesAbout(Site site, WorkKind? kind) =>
        kind is { } work ? Rules.Where(rule => rule.IsAbout(site.Id, work)) : [];
}
