using System.Data.Common;
using GddWatch.Storage.Sql;
using Microsoft.Data.Sqlite;

namespace GddWatch.Storage.Dialects;

/// <summary>A file of SQLite: one writer at a time, a commit is on the disk when it returns.</summary>
internal sealed class SqliteDialect : IDialect
{
    private readonly string connectionString;

    public SqliteDialect(string path, TimeSpan busyTimeout)
    {
        Where = System.IO.Path.GetFullPath(path);
        connectionString = new SqliteConnectionStringBuilder
        {
            DataSource = Where,
            Mode = SqliteOpenMode.ReadWrite,
            ForeignKeys = true,
            // Seconds for which a statement waits while another process writes.
            DefaultTimeout = (int)Math.Ceiling(busyTimeout.TotalSeconds),
        }.ConnectionString;
    }

    public string Where { get; }

    public bool LocksRows => false;

    public ValueTask DisposeAsync()
    {
        using SqliteConnection pooled = new(connectionString);
        SqliteConnection.ClearPool(pooled);
        return ValueTask.CompletedTask;
    }

    public Task PrepareAsync(TimeProvider clock, IReadOnlyList<SchemaChange> changes, CancellationToken stop)
    {
        DatabaseFile.Make(Where);
        return PersistAsync(
            async _ =>
            {
                await using SqliteConnection connection = await OpenAsync(stop);
                // Asked, since SQLite quietly opens a protected file for reading alone, and lets even a writer's transaction begin on it.
                if (SQLitePCL.raw.sqlite3_db_readonly(connection.Handle, "main") == 1)
                    throw SqliteFaults.MayNotBeWritten(Where);
                Work work = new(connection, null, stop);
                await work.ExecuteAsync(SqliteSql.KeepLogAhead);
                string finding = await work.SingleAsync<string>(SqliteSql.QuickCheck);
                if (finding is not "ok")
                    throw SqliteFaults.Damaged(Where, finding);
                SqliteSchema.BringUpToDate(connection, Where, changes, () => DatabaseFile.BackUp(connectionString, Where, clock.GetUtcNow()));
                return true;
            },
            stop);
    }

    public async Task<DbConnection> ConnectAsync(CancellationToken stop) => await OpenAsync(stop);

    public async Task<DbTransaction> BeginAsync(DbConnection connection, bool alone, CancellationToken stop) => await connection.BeginTransactionAsync(stop);

    public Task<DbTransaction> BeginReadingAsync(DbConnection connection, CancellationToken stop) =>
        Task.FromResult<DbTransaction>(((SqliteConnection)connection).BeginTransaction(deferred: true));

    public async Task<IReadOnlyList<string>> FindDamageAsync(Work work)
    {
        IEnumerable<string> damage = (await work.QueryAsync<string>(SqliteSql.IntegrityCheck)).Where(finding => finding is not "ok").Select(finding => $"The file is damaged: {finding}.");
        IEnumerable<string> dangling = (await work.QueryAsync<DanglingRow>(SqliteSql.ForeignKeyCheck)).Select(row => $"Row {row.RowId} of {row.Table} refers to something in {row.Parent} that is not there.");
        return [.. damage, .. dangling];
    }

    public Task BackUpAsync(string file, CancellationToken stop) => PersistAsync(
        _ =>
        {
            DatabaseFile.CopyWhole(connectionString, file);
            return Task.FromResult(true);
        },
        stop);

    public async Task<T> PersistAsync<T>(Func<CancellationToken, Task<T>> work, CancellationToken stop)
    {
        try
        {
            return await work(stop);
        }
        catch (SqliteException fault)
        {
            throw SqliteFaults.Explain(Where, fault);
        }
        catch (FormatException fault)
        {
            throw SqliteFaults.Damaged(Where, fault.Message);
        }
    }

    private sealed class DanglingRow
    {
        public string Table { get; init; } = "";

        public long RowId { get; init; }

        public string Parent { get; init; } = "";
    }

    private async Task<SqliteConnection> OpenAsync(CancellationToken stop)
    {
        SqliteConnection connection = new(connectionString);
        try
        {
            await connection.OpenAsync(stop);
            await new Work(connection, null, stop).ExecuteAsync(SqliteSql.FlushEachCommit);
            return connection;
        }
        catch
        {
            await connection.DisposeAsync();
            throw;
        }
    }
}
