namespace GddWatch.Agronomy.Journal;

/// <summary>Something that a person recorded about a site. One case a file; the cases are all in this folder.</summary>
public abstract record JournalEntry
{
    private protected JournalEntry()
    {
    }

    /// <summary>The site's id.</summary>
    public required string SiteId { get; init; }

    /// <summary>The day on which it was so, in the site's own calendar.</summary>
    public required DateOnly On { get; init; }

    /// <summary>Whatever the person added; may be empty.</summary>
    public string Note { get; init; } = "";
}
