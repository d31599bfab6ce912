using GddWatch.Agronomy.Changes;

namespace GddWatch.Agronomy.Places;

/// <summary>A person who is told, and what about.</summary>
public sealed record Recipient
{
    /// <summary>What a recipient hears of unless the configuration says otherwise.</summary>
    public static readonly IReadOnlyList<NoticeKind> UsualNotices =
        [NoticeKind.Opened, NoticeKind.Closing, NoticeKind.Closed, NoticeKind.Corrected];

    /// <summary>The mail address.</summary>
    public required string Address { get; init; }

    /// <summary>The name, for the salutation; may be empty.</summary>
    public string Name { get; init; } = "";

    /// <summary>The ids of the sites; null is all of them.</summary>
    public IReadOnlyList<string>? Sites { get; init; }

    /// <summary>The ids of the treatments; null is all of them.</summary>
    public IReadOnlyList<string>? Treatments { get; init; }

    /// <summary>The kinds of notice wanted.</summary>
    public IReadOnlyList<NoticeKind> Notices { get; init; } = UsualNotices;

    /// <summary>Whether several notices of one pass come in one mail.</summary>
    public bool Together { get; init; }

    /// <summary>When this person wants no mail; null for any time.</summary>
    public QuietHours? Quiet { get; init; }

    /// <summary>IANA name of the time zone where this person lives, for the quiet hours; null is the region's.</summary>
    public string? TimeZone { get; init; }

    /// <summary>Nothing is queued for this person before that day, where it is set.</summary>
    public DateOnly? PausedUntil { get; init; }

    /// <summary>Whether this person hears of that treatment at that site on that day, of one change or another.</summary>
    public bool HearsOf(string siteId, string treatmentId, DateOnly day) => Notices.Any(kind => Wants(siteId, treatmentId, kind, day));

    /// <summary>Whether this person wants notices of that kind about that treatment at that site on that day.</summary>
    public bool Wants(string siteId, string treatmentId, NoticeKind kind, DateOnly day) =>
        (Sites is null || Sites.Contains(siteId))
        && (Treatments is null || Treatments.Contains(treatmentId))
        && Notices.Contains(kind)
        && (PausedUntil is not { } until || day >= until);
}
