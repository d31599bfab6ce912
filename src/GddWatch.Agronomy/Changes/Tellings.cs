namespace GddWatch.Agronomy.Changes;

/// <summary>
/// How often something was told of each window, by whatever mail to whomever. It only grows, is the same for all readers and follows from what is kept, so that it is the number by which a
/// calendar knows the later of two entries (RFC 5545, section 3.8.7.4, SEQUENCE).
/// </summary>
public sealed class Tellings
{
    private readonly Dictionary<string, HashSet<(NoticeKind Kind, int Revision, DateOnly Day)>> windows = new(StringComparer.Ordinal);

    /// <summary>Counts what was told before and what is about to be told.</summary>
    /// <param name="told">What was told before: the change and the day of the telling.</param>
    /// <param name="planned">What is told now.</param>
    public Tellings(IEnumerable<(NoticeKey Key, DateOnly Day)> told, IEnumerable<PlannedNotice> planned)
    {
        ArgumentNullException.ThrowIfNull(told);
        ArgumentNullException.ThrowIfNull(planned);
        foreach ((NoticeKey key, DateOnly day) in told) Add(key, day);
        foreach (Notice notice in planned.Select(each => each.Notice))
        {
            foreach (ToldFact fact in notice.Facts) Add(fact.Key, notice.Day);
        }
    }

    /// <summary>How often something was told of the window of a key.</summary>
    public int Of(NoticeKey key)
    {
        ArgumentNullException.ThrowIfNull(key);
        return windows.TryGetValue(key.WindowId(), out HashSet<(NoticeKind Kind, int Revision, DateOnly Day)>? known) ? known.Count : 0;
    }

    /// <summary>The notice with its calendar entry numbered.</summary>
    public Notice Numbered(Notice notice)
    {
        ArgumentNullException.ThrowIfNull(notice);
        return notice.Entry is { } entry ? notice with { Entry = entry with { Sequence = Of(notice.Key) } } : notice;
    }

    private void Add(NoticeKey key, DateOnly day)
    {
        if (!windows.TryGetValue(key.WindowId(), out HashSet<(NoticeKind Kind, int Revision, DateOnly Day)>? known)) windows.Add(key.WindowId(), known = []);
        known.Add((key.Kind, key.Revision, day));
    }
}
