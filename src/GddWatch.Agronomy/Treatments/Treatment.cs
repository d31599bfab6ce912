using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Treatments.Conditions;

namespace GddWatch.Agronomy.Treatments;

/// <summary>One lawn task that has a window, as an adviser describes it.</summary>
public sealed record Treatment
{
    /// <summary>Short and plain, such as "overseeding".</summary>
    public required string Id { get; init; }

    /// <summary>The name that people read.</summary>
    public required string Name { get; init; }

    /// <summary>The turf it is for; a site with any of them has the window.</summary>
    public required IReadOnlyList<TurfType> Turf { get; init; }

    /// <summary>The part of the year in which its window is looked for.</summary>
    public required SeasonRule Season { get; init; }

    /// <summary>What opens the window.</summary>
    public required Condition Opens { get; init; }

    /// <summary>What makes an open window past its best; null where nothing does.</summary>
    public Condition? Closing { get; init; }

    /// <summary>What closes it, open or not yet opened; null where only the season's end does.</summary>
    public Condition? Closed { get; init; }

    /// <summary>While this is so, an open window waits, such as weather too hot for a weed killer; null where nothing makes it wait.</summary>
    public Condition? Paused { get; init; }

    /// <summary>The kind of work, as far as local law looks at it; null where no law does.</summary>
    public WorkKind? Work { get; init; }

    /// <summary>After how many days it may be done again in the same season [days]; null where once is enough.</summary>
    public int? AgainAfterDays { get; init; }

    /// <summary>What it forbids and is forbidden by.</summary>
    public IReadOnlyList<Exclusion> Excludes { get; init; } = [];

    /// <summary>Told only at sites with this in their history, such as "grubs"; the window is judged everywhere. Null tells everywhere.</summary>
    public string? OnlyWithHistory { get; init; }

    /// <summary>Told only at sites where one of these grasses grows; empty tells whatever grows. A site whose grass is not configured is not told.</summary>
    public IReadOnlyList<string> OnlyWithGrass { get; init; } = [];

    /// <summary>Whether it is told in the weekly bulletin and in <c>status</c> alone, never by a mail of its own.</summary>
    public bool BulletinOnly { get; init; }

    /// <summary>What its past windows are compared with; judging does not look at it.</summary>
    public RivalRules CompareWith { get; init; } = RivalRules.None;

    /// <summary>When a heads-up is sent before it opens.</summary>
    public HeadsUpRule HeadsUp { get; init; } = HeadsUpRule.Usual;

    /// <summary>What to do, a sentence each.</summary>
    public IReadOnlyList<string> Do { get; init; } = [];

    /// <summary>What is left to do once it is past its best, a sentence each.</summary>
    public IReadOnlyList<string> DoPastBest { get; init; } = [];

    /// <summary>What not to do, a sentence each.</summary>
    public IReadOnlyList<string> DoNot { get; init; } = [];

    /// <summary>The cautions, a sentence each.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>What a reader should know about how well the thresholds are tested, a sentence each.</summary>
    public IReadOnlyList<string> Untested { get; init; } = [];

    /// <summary>The heat sums that its conditions ask for, each once, in order.</summary>
    public IReadOnlyList<HeatSumDefinition> HeatSums() => [.. AllConditions().OfType<HeatSumCondition>().Select(heat => heat.Sum).Distinct()];

    private IEnumerable<Condition> AllConditions() =>
        new[] { Opens, Closing, Closed, Paused }.OfType<Condition>().SelectMany(condition => condition.AndItsParts());

    /// <summary>Whether a site has turf that the treatment is for.</summary>
    public bool IsFor(Site site)
    {
        ArgumentNullException.ThrowIfNull(site);
        return site.Turf.Any(Turf.Contains);
    }

    /// <summary>Why people are not told of its window at a site, as a clause; null where they are.</summary>
    public string? WhyNotTold(Site site)
    {
        ArgumentNullException.ThrowIfNull(site);
        if (OnlyWithHistory is not null && !site.History.Contains(OnlyWithHistory)) return $"{OnlyWithHistory} are not in its history";
        return IsToldAt(site) ? null : $"it is for {Wording.Alternatives(OnlyWithGrass)}, and none of them is configured there";
    }

    /// <summary>Whether people are told of its window at a site.</summary>
    public bool IsToldAt(Site site)
    {
        ArgumentNullException.ThrowIfNull(site);
        return (OnlyWithHistory is null || site.History.Contains(OnlyWithHistory)) && (OnlyWithGrass.Count == 0 || OnlyWithGrass.Any(site.Grass.Contains));
    }
}
