using GddWatch.Agronomy.Changes;

namespace GddWatch.Storage;

/// <summary>Which notices were queued for whom, delivered yet or not. Capitals in an address make no difference.</summary>
public sealed class ToldNotices
{
    private readonly Dictionary<(NoticeKey Key, string Address), DateOnly> days;

    internal ToldNotices(IReadOnlyList<ToldNotice> all)
    {
        All = all;
        days = all.ToDictionary(told => (told.Key, told.Address), told => told.Day);
    }

    /// <summary>All of them, by site, treatment, season, kind and address.</summary>
    public IReadOnlyList<ToldNotice> All { get; }

    /// <summary>The day whose judging made that notice for that person, or null where it was never queued.</summary>
    public DateOnly? DayTold(NoticeKey key, string address) => days.TryGetValue((key, StoredText.Address(address)), out DateOnly day) ? day : null;
}
