namespace GddWatch.Agronomy.Changes;

/// <summary>
/// One message about one change of one window, complete: everything that a mail needs is in it, in the reader's units, so that delivery reads the queue
/// and nothing else.
/// </summary>
public sealed record Notice
{
    /// <summary>What makes it the same notice.</summary>
    public required NoticeKey Key { get; init; }

    /// <summary>Everything that is told once this notice is: what it is about, and what else it says of the same window.</summary>
    public IReadOnlyList<ToldFact> Facts { get; init; } = [];

    /// <summary>The day whose judging made it.</summary>
    public required DateOnly Day { get; init; }

    /// <summary>The day on which what it tells began.</summary>
    public required DateOnly Since { get; init; }

    /// <summary>Whether the window was already so when it was first looked at, rather than changing now.</summary>
    public bool FoundSo { get; init; }

    /// <summary>The site's name.</summary>
    public required string SiteName { get; init; }

    /// <summary>The treatment's name.</summary>
    public required string TreatmentName { get; init; }

    /// <summary>What happened in one short sentence, for the subject line and the first line.</summary>
    public required string Headline { get; init; }

    /// <summary>Why, in one sentence made of the numbers that decided it.</summary>
    public required string Reason { get; init; }

    /// <summary>The numbers that decided it.</summary>
    public required IReadOnlyList<Figure> Figures { get; init; }

    /// <summary>When the window is expected to end, or why that cannot be said; empty where it has ended.</summary>
    public string ExpectedEnd { get; init; } = "";

    /// <summary>What to do.</summary>
    public required IReadOnlyList<string> Do { get; init; }

    /// <summary>What not to do.</summary>
    public required IReadOnlyList<string> DoNot { get; init; }

    /// <summary>What this treatment and another forbid each other, and what is not known about it.</summary>
    public required IReadOnlyList<string> Choices { get; init; }

    /// <summary>The cautions.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }

    /// <summary>What the reader should know about the data behind it, such as days that were filled.</summary>
    public IReadOnlyList<string> DataRemarks { get; init; } = [];

    /// <summary>The window as an entry of a calendar; null where it never opened.</summary>
    public CalendarEntry? Entry { get; init; }

    /// <summary>What decided it as a chart; null where there is nothing to draw.</summary>
    public NoticeChart? Chart { get; init; }

    /// <summary>The same notice under a later revision of its key, for another message than the one that it was in.</summary>
    public Notice Again(int revision) => this with
    {
        Key = Key with { Revision = revision },
        Facts = [.. Facts.Select(fact => fact with { Key = fact.Key with { Revision = revision } })],
    };
}
