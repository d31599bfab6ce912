namespace GddWatch.Feeds.Faults;

/// <summary>The faults of one reading, in the order met; of one kind in one file the first twenty, and then how many more.</summary>
internal sealed class FaultList
{
    /// <summary>How many faults of one kind are told for one file.</summary>
    public const int ShownOfOneKind = 20;

    private readonly List<Fault> shown = [];
    private readonly Dictionary<(string File, FaultKind Kind), (int Count, Fault Last)> counts = [];

    /// <summary>Whether nothing was wrong so far.</summary>
    public bool IsEmpty => shown.Count == 0;

    /// <summary>Whether any file was refused.</summary>
    public bool HasRefusal => shown.Exists(fault => fault.Severity == FaultSeverity.Refused);

    public void Add(FaultKind kind, Fault fault)
    {
        int count = counts.TryGetValue((fault.File, kind), out (int Count, Fault Last) before) ? before.Count + 1 : 1;
        counts[(fault.File, kind)] = (count, fault);
        if (count <= ShownOfOneKind) shown.Add(fault);
    }

    /// <summary>Takes over what another list gathered, its counts included.</summary>
    public void AddAll(FaultList other)
    {
        foreach (KeyValuePair<(string File, FaultKind Kind), (int Count, Fault Last)> each in other.counts)
        {
            int count = counts.TryGetValue(each.Key, out (int Count, Fault Last) before) ? before.Count : 0;
            counts[each.Key] = (count + each.Value.Count, each.Value.Last);
        }

        shown.AddRange(other.shown);
    }

    /// <summary>All faults. A refused file is only left out where the feed has other files that could be used.</summary>
    public IReadOnlyList<Fault> Told(bool refusalsAreLeftOut)
    {
        List<Fault> told = [.. shown];
        foreach ((int count, Fault last) in counts.Values)
        {
            if (count <= ShownOfOneKind) continue;
            told.Add(last with { Problem = $"{count - ShownOfOneKind} more of this kind, not listed; this is the last. {last.Problem}" });
        }

        if (!refusalsAreLeftOut) return told;
        return [.. told.Select(fault => fault.Severity == FaultSeverity.Refused ? fault with { Severity = FaultSeverity.LeftOut } : fault)];
    }
}
