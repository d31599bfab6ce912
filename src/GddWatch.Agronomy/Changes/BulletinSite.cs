namespace GddWatch.Agronomy.Changes;

/// <summary>One site in the weekly overview.</summary>
public sealed record BulletinSite
{
    /// <summary>The site's name.</summary>
    public required string Name { get; init; }

    /// <summary>What is open, with what is left of it.</summary>
    public IReadOnlyList<BulletinLine> Open { get; init; } = [];

    /// <summary>What usually opens soon.</summary>
    public IReadOnlyList<BulletinLine> Nearing { get; init; } = [];

    /// <summary>What all that is said of the days ahead rests on, in sentences; empty where nothing can be said of them.</summary>
    public string DaysAhead { get; init; } = "";

    /// <summary>What must wait, and why.</summary>
    public IReadOnlyList<BulletinLine> Waits { get; init; } = [];

    /// <summary>What is named as too early without a window to wait for; its reason stands once for all sites.</summary>
    public IReadOnlyList<string> Always { get; init; } = [];

    /// <summary>Mowing, watering and frost this week.</summary>
    public IReadOnlyList<BulletinLine> Care { get; init; } = [];

    /// <summary>What was recorded in the last week.</summary>
    public IReadOnlyList<BulletinLine> Done { get; init; } = [];

    /// <summary>The site's warmth against what is usual; null where too little is known to draw.</summary>
    public BulletinChart? Chart { get; init; }
}

/// <summary>One line: what, and what about it.</summary>
/// <param name="What">The name.</param>
/// <param name="Text">What about it.</param>
public sealed record BulletinLine(string What, string Text);
