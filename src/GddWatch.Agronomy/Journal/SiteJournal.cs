using GddWatch.Agronomy.Soil;

namespace GddWatch.Agronomy.Journal;

/// <summary>
/// All that was recorded about one site, in the order of days. That something is not in it does not mean that it was not done: only what was recorded is known.
/// </summary>
public sealed class SiteJournal
{
    private readonly IReadOnlyList<JournalEntry> entries;

    /// <summary>The journal of a site.</summary>
    /// <param name="entries">Its entries, in any order; those of one day stay in the order given, so that the one recorded last is the last. What was mended or withdrawn is not among them.</param>
    public SiteJournal(IEnumerable<JournalEntry> entries) => this.entries = [.. entries.OrderBy(entry => entry.On)];

    /// <summary>A site about which nothing was recorded.</summary>
    public static SiteJournal Empty { get; } = new([]);

    /// <summary>Whether nothing at all was recorded.</summary>
    public bool IsEmpty => entries.Count == 0;

    /// <summary>The entries in the order of days.</summary>
    public IReadOnlyList<JournalEntry> Entries => entries;

    /// <summary>What was known on a day: later entries are hidden.</summary>
    public SiteJournal Until(DateOnly day) =>
        entries.Count == 0 || entries[^1].On <= day ? this : new SiteJournal(entries.Where(entry => entry.On <= day));

    /// <summary>The treatments carried out of that id, up to a day and on it, in the order of days.</summary>
    public IEnumerable<TreatmentDone> Done(string treatmentId, DateOnly until) =>
        entries.OfType<TreatmentDone>().Where(done => done.Treatment == treatmentId && done.On <= until);

    /// <summary>The last time that a treatment was carried out, up to a day and on it; null where none is recorded.</summary>
    public TreatmentDone? LastDone(string treatmentId, DateOnly until) => Done(treatmentId, until).LastOrDefault();

    /// <summary>The last record of one of several treatments for a day itself; null where there is none.</summary>
    public TreatmentDone? LastOn(IReadOnlyCollection<string> treatmentIds, DateOnly day) =>
        treatmentIds.Count == 0 ? null : entries.OfType<TreatmentDone>().LastOrDefault(done => done.On == day && treatmentIds.Contains(done.Treatment));

    /// <summary>How many mowings were recorded after a day, up to another and on it.</summary>
    public int Mowings(DateOnly after, DateOnly until) => entries.OfType<Mowing>().Count(mowing => mowing.On > after && mowing.On <= until);

    /// <summary>The readings of soil thermometers.</summary>
    public IReadOnlyList<ProbeReading> Readings() =>
        [.. entries.OfType<SoilReading>().Select(reading => new ProbeReading(reading.On, reading.At, reading.Depth, reading.Value))];
}
