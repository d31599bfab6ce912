using GddWatch.Storage.Sql;

namespace GddWatch.Storage;

/// <summary>Who was told what.</summary>
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
}
