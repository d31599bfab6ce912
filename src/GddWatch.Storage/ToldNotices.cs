using GddWatch.Agronomy.Changes;

namespace GddWatch.Storage;

/// <summary>Which notices were queued for whom, delivered yet or not. Capitals in an address make no difference.</summary>
public sealed class ToldNotices
{
    private readonly Dictionary<(NoticeKey Key, string Address), Told> last = [];

    internal ToldNotices(IReadOnlyList<ToldNotice> all)
    {
        All = all;
        foreach (ToldNotice notice in all.OrderBy(notice => notice.Key.Revision)) last[(notice.Key with { Revision = 0 }, notice.Address)] = notice.Told;
    }

    /// <summary>All of them, by site, treatment, season, kind, address and revision.</summary>
    public IReadOnlyList<ToldNotice> All { get; }

    /// <summary>What that person was last told of that change, whatever the revision of the key; null where it was never queued.</summary>
    public Told? Last(NoticeKey key, string address) => last.GetValueOrDefault((key with { Revision = 0 }, StoredText.Address(address)));
}
