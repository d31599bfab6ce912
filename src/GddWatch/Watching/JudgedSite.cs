using System.Collections.Frozen;
using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Windows;
using GddWatch.Storage;

namespace GddWatch.Watching;

/// <summary>What one site brings to a pass. It holds no weather.</summary>
/// <param name="Site">The site's id.</param>
internal sealed record JudgedSite(string Site)
{
    /// <summary>No bulletin speaks of the site.</summary>
    public static readonly IReadOnlyDictionary<string, BulletinSite> NoBulletins = FrozenDictionary<string, BulletinSite>.Empty;

    /// <summary>Where its windows stand; null where it could not be judged.</summary>
    public Standing? Standing { get; init; }

    /// <summary>Its windows, to be kept.</summary>
    public IReadOnlyList<KeptWindow> Windows { get; init; } = [];

    /// <summary>What is due to be told, and to whom.</summary>
    public IReadOnlyList<PlannedNotice> Planned { get; init; } = [];

    /// <summary>What the operator is told, a sentence each.</summary>
    public IReadOnlyList<string> OperatorWords { get; init; } = [];

    /// <summary>What is the matter with its weather.</summary>
    public IReadOnlyList<FeedTrouble> Troubles { get; init; } = [];

    /// <summary>What the bulletin says of it, by the choice of treatments; none on other days.</summary>
    public IReadOnlyDictionary<string, BulletinSite> Bulletins { get; init; } = NoBulletins;

    /// <summary>What stands in its calendar; null where that is not known.</summary>
    public IReadOnlyList<Notice>? Calendar { get; private init; }

    /// <summary>What went wrong, a sentence each.</summary>
    public IReadOnlyList<string> Failures { get; private init; } = [];

    /// <summary>A site that could not be judged.</summary>
    public static JudgedSite Failed(Site site, string why) => new(site.Id) { Failures = [why] };

    /// <summary>The same with what stands in its calendar.</summary>
    public JudgedSite WithCalendar(SiteJudging? judging, Region region)
    {
        try
        {
            return judging is null ? this : this with { Calendar = CalendarPass.Of(judging, region) };
        }
        catch (Exception failure) when (failure is not OperationCanceledException)
        {
            // The mails and the windows are not to be lost over it.
            return this with { Failures = [$"The calendar of {Site} could not be made: {failure.Message}"] };
        }
    }
}
