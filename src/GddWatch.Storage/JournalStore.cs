using GddWatch.Agronomy.Journal;
using GddWatch.Storage.Sql;

namespace GddWatch.Storage;

/// <summary>Keeps the journal. Nothing is ever changed or removed: what was mended or withdrawn stays, and is left out of what is in force.</summary>
public sealed class JournalStore(Database database)
{
    /// <summary>Every entry, mended and withdrawn ones too, in the order in which they were recorded.</summary>
    public Task<IReadOnlyList<KeptEntry>> LoadHistoryAsync(CancellationToken stop) => database.ReadAsync(LoadAsync, stop);

    /// <summary>The entries in force by the sites' ids.</summary>
    public async Task<IReadOnlyDictionary<string, SiteJournal>> LoadAsync(CancellationToken stop)
    {
        IReadOnlyList<KeptEntry> all = await LoadHistoryAsync(stop);
        return all.Where(kept => kept.IsInForce)
            .GroupBy(kept => kept.Entry.SiteId, kept => kept.Entry, StringComparer.Ordinal)
            .ToDictionary(site => site.Key, site => new SiteJournal(site), StringComparer.Ordinal);
    }

    /// <summary>
    /// Records entries that somebody wrote just now, all or none. One that stands there in the same words changes nothing. One about the same thing on the same day
    /// in other words mends the earlier one, which is kept.
    /// </summary>
    /// <param name="entries">The entries, in order.</param>
    /// <param name="insteadOf">The number of an entry that a single one stands in for, such as one with a wrong date; null where there is none.</param>
    /// <param name="at">The instant of recording.</param>
    /// <param name="stop">Stops it; nothing is recorded then.</param>
    /// <exception cref="ArgumentException">Several entries are to stand in for one.</exception>
    /// <exception cref="JournalNumberException">There is no such entry in force to stand in for.</exception>
    /// <exception cref="StorageException">The database failed.</exception>
    public Task<IReadOnlyList<JournalOutcome>> RecordAsync(IReadOnlyList<JournalEntry> entries, long? insteadOf, DateTimeOffset at, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(entries);
        if (insteadOf is not null && entries.Count != 1) throw new ArgumentException($"{entries.Count} entries instead of one; only one can stand in for one", nameof(entries));
        return EachAsync(entries, (work, book, entry) => RecordAsync(work, book, entry, insteadOf, at), stop);
    }

    /// <summary>
    /// Records entries that stand in a file, all or none. It differs in one thing: words that were recorded before and mended or withdrawn since are left aside,
    /// since the file does not know of that, and importing it again would undo it.
    /// </summary>
    /// <param name="entries">The entries, in order.</param>
    /// <param name="at">The instant of recording.</param>
    /// <param name="stop">Stops it; nothing is recorded then.</param>
    /// <exception cref="StorageException">The database failed.</exception>
    public Task<IReadOnlyList<JournalOutcome>> ImportAsync(IReadOnlyList<JournalEntry> entries, DateTimeOffset at, CancellationToken stop) => EachAsync(
        entries,
        (work, book, entry) => book.SameThing(entry)?.Entry != entry && book.Settled(entry) is { } earlier
            ? Task.FromResult(new JournalOutcome(entry, earlier.Number, JournalChange.LeftAside, [], earlier))
            : RecordAsync(work, book, entry, null, at),
        stop);

    /// <summary>Withdraws an entry, which is kept with the reason.</summary>
    /// <exception cref="JournalNumberException">There is no such entry in force.</exception>
    /// <exception cref="StorageException">The database failed.</exception>
    public Task<KeptEntry> WithdrawAsync(long number, string because, DateTimeOffset at, CancellationToken stop) => database.WriteAsync(
        async work =>
        {
            KeptEntry kept = (await LoadAsync(work)).FirstOrDefault(each => each.Number == number) ?? throw JournalNumberException.None(number);
            if (!kept.IsInForce) throw JournalNumberException.NotInForce(kept);
            await work.ExecuteAsync(JournalSql.Withdraw, new { number, because, at = StoredText.Of(at) });
            return kept;
        },
        stop);

    private Task<IReadOnlyList<JournalOutcome>> EachAsync(
        IReadOnlyList<JournalEntry> entries, Func<Work, JournalBook, JournalEntry, Task<JournalOutcome>> record, CancellationToken stop) => database.WriteAsync(
        async work =>
        {
            var book = new JournalBook(await LoadAsync(work));
            var outcomes = new List<JournalOutcome>();
            foreach (JournalEntry entry in entries) outcomes.Add(await record(work, book, JournalKinds.AsKept(entry)));
            return (IReadOnlyList<JournalOutcome>)outcomes;
        },
        stop);

    private static async Task<JournalOutcome> RecordAsync(Work work, JournalBook book, JournalEntry entry, long? insteadOf, DateTimeOffset at)
    {
        KeptEntry? same = book.SameThing(entry);
        KeptEntry? wrong = insteadOf is { } number ? book.ToMend(number, entry) : null;
        KeptEntry standing = same?.Entry == entry
            ? same
            : new KeptEntry(await work.SingleAsync<long>(JournalSql.Insert, JournalRow.Of(entry, at)), entry, at, null, null, "");
        KeptEntry[] mended = [.. new[] { wrong, same }.OfType<KeptEntry>().Where(before => before.Number != standing.Number).DistinctBy(before => before.Number)];
        foreach (KeptEntry before in mended)
        {
            await work.ExecuteAsync(JournalSql.Replace, new { number = before.Number, by = standing.Number });
            book.Replace(before, standing.Number);
        }

        book.Add(standing);
        return new JournalOutcome(entry, standing.Number, ReferenceEquals(standing, same) ? JournalChange.AlreadyThere : JournalChange.Recorded, [.. mended.Select(before => before.Number)]);
    }

    private static async Task<IReadOnlyList<KeptEntry>> LoadAsync(Work work) =>
        [.. (await work.QueryAsync<JournalRow>(JournalSql.LoadAll)).Select(row => row.Kept())];
}
