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
    /// Records entries, all or none. One that stands there in the same words changes nothing. One about the same thing on the same day in other words mends the
    /// earlier one, which is kept.
    /// </summary>
    /// <param name="entries">The entries, in order.</param>
    /// <param name="insteadOf">The number of an entry that the first one stands in for, such as one with a wrong date; null where there is none.</param>
    /// <param name="at">The instant of recording.</param>
    /// <param name="stop">Stops it; nothing is recorded then.</param>
    /// <exception cref="StorageException">There is no such entry in force to stand in for, or the database failed.</exception>
    public Task<IReadOnlyList<JournalOutcome>> RecordAsync(IReadOnlyList<JournalEntry> entries, long? insteadOf, DateTimeOffset at, CancellationToken stop) => database.WriteAsync(
        async work =>
        {
            Dictionary<string, KeptEntry> inForce = (await LoadAsync(work)).Where(kept => kept.IsInForce).ToDictionary(kept => JournalKinds.Identity(kept.Entry), StringComparer.Ordinal);
            if (insteadOf is { } wrong && inForce.Values.All(kept => kept.Number != wrong)) throw NoSuchEntry(wrong);
            var outcomes = new List<JournalOutcome>();
            foreach (JournalEntry entry in entries)
            {
                KeptEntry? same = inForce.GetValueOrDefault(JournalKinds.Identity(entry));
                if (same?.Entry == entry)
                {
                    outcomes.Add(new JournalOutcome(entry, same.Number, true, null));
                    continue;
                }

                long number = await work.SingleAsync<long>(JournalSql.Insert, JournalRow.Of(entry, at));
                long? mended = outcomes.Count == 0 ? insteadOf ?? same?.Number : same?.Number;
                foreach (long before in new[] { mended, same?.Number }.OfType<long>().Distinct()) await work.ExecuteAsync(JournalSql.Replace, new { number = before, by = number });
                inForce[JournalKinds.Identity(entry)] = new KeptEntry(number, entry, at, null, null, "");
                outcomes.Add(new JournalOutcome(entry, number, false, mended));
            }

            return (IReadOnlyList<JournalOutcome>)outcomes;
        },
        stop);

    /// <summary>Withdraws an entry, which is kept with the reason.</summary>
    /// <exception cref="StorageException">There is no such entry in force, or the database failed.</exception>
    public Task<KeptEntry> WithdrawAsync(long number, string because, DateTimeOffset at, CancellationToken stop) => database.WriteAsync(
        async work =>
        {
            KeptEntry? kept = (await LoadAsync(work)).FirstOrDefault(each => each.Number == number && each.IsInForce);
            if (kept is null) throw NoSuchEntry(number);
            await work.ExecuteAsync(JournalSql.Withdraw, new { number, because, at = StoredText.Of(at) });
            return kept;
        },
        stop);

    private static async Task<IReadOnlyList<KeptEntry>> LoadAsync(Work work) =>
        [.. (await work.QueryAsync<JournalRow>(JournalSql.LoadAll)).Select(row => row.Kept())];

    private static StorageException NoSuchEntry(long number) =>
        new($"There is no entry {number} in force. Nothing was recorded. `gddwatch record list` shows the numbers, with --all also of what was mended or withdrawn.");
}
