using GddWatch.Storage.Sql;

namespace GddWatch.Storage;

/// <summary>Who was told what, and who is known.</summary>
public sealed class ToldStore(Database database)
{
    /// <summary>The notices that were queued.</summary>
    public Task<ToldNotices> LoadAsync(CancellationToken stop) => database.ReadAsync(
        async work =>
        {
            IEnumerable<ToldRow> rows = await work.QueryAsync<ToldRow>(ToldSql.Load);
            return new ToldNotices([.. rows.Select(row => row.Notice())]);
        },
        stop);

    /// <summary>The recipients that a pass has known, and since which day. Capitals in an address make no difference.</summary>
    public Task<IReadOnlyDictionary<string, DateOnly>> LoadKnownRecipientsAsync(CancellationToken stop) => database.ReadAsync(
        async work =>
        {
            IEnumerable<RecipientRow> rows = await work.QueryAsync<RecipientRow>(KnownRecipientSql.Load);
            return (IReadOnlyDictionary<string, DateOnly>)rows.ToDictionary(
                row => row.Address, row => StoredText.Day(row.Since), StringComparer.OrdinalIgnoreCase);
        },
        stop);

    private sealed class RecipientRow
    {
        public string Address { get; init; } = "";

        public string Since { get; init; } = "";
    }
}
