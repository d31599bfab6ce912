using GddWatch.Agronomy.Journal;

namespace GddWatch.Storage;

/// <summary>
/// The journal while entries are added to it: decides what each of them changes. Of entries about the same thing on the same day at most one is in force, and no
/// entry is ever lost.
/// </summary>
internal sealed class JournalBook
{
    private readonly Dictionary<long, KeptEntry> all;
    private readonly Dictionary<string, KeptEntry> inForce;

    // The last entry in these words that no longer stands: the one that tells what became of them.
    private readonly Dictionary<JournalEntry, KeptEntry> settled = [];

    public JournalBook(IReadOnlyList<KeptEntry> kept)
    {
        all = kept.ToDictionary(each => each.Number);
        inForce = kept.Where(each => each.IsInForce).ToDictionary(each => JournalKinds.Identity(each.Entry), StringComparer.Ordinal);
        foreach (KeptEntry each in kept.Where(each => !each.IsInForce)) settled[each.Entry] = each;
    }

    /// <summary>The entry that stands about the same thing; null where none does.</summary>
    public KeptEntry? SameThing(JournalEntry entry) => inForce.GetValueOrDefault(JournalKinds.Identity(entry));

    /// <summary>The entry as it was recorded in the same words and mended or withdrawn since; null where it was not.</summary>
    public KeptEntry? Settled(JournalEntry entry) => settled.GetValueOrDefault(entry);

    /// <summary>The entry that another is to stand in for; null where it stands in for it already.</summary>
    /// <exception cref="JournalNumberException">There is no such entry, or it is no longer in force and something else became of it.</exception>
    public KeptEntry? ToMend(long number, JournalEntry by)
    {
        if (all.GetValueOrDefault(number) is not { } wrong) throw JournalNumberException.None(number);
        if (wrong.IsInForce) return wrong;
        if (SameThing(by) is { } there && there.Entry == by && EndOf(wrong).Number == there.Number) return null;
        throw JournalNumberException.NotInForce(wrong);
    }

    /// <summary>Adds a recorded entry.</summary>
    public void Add(KeptEntry kept)
    {
        all[kept.Number] = kept;
        inForce[JournalKinds.Identity(kept.Entry)] = kept;
    }

    /// <summary>Lets one entry stand for another.</summary>
    public void Replace(KeptEntry before, long by)
    {
        KeptEntry replaced = before with { ReplacedBy = by };
        all[before.Number] = replaced;
        settled[before.Entry] = replaced;
        inForce.Remove(JournalKinds.Identity(before.Entry));
    }

    private KeptEntry EndOf(KeptEntry kept)
    {
        while (kept.ReplacedBy is { } by) kept = all[by];
        return kept;
    }
}
