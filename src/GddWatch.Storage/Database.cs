using System.Data.Common;
using GddWatch.Storage.Sql;
using Microsoft.Data.Sqlite;

namespace GddWatch.Storage;

/// <summary>The file in which everything is kept between passes. Writers take turns; readers see what was last committed.</summary>
public sealed class Database : IAsyncDisposable
{
    private static readonly TimeSpan UsualBusyTimeout = TimeSpan.FromSeconds(5);

    private readonly string connectionString;

    // Writers of this process queue here without blocking a thread each; those of other processes wait for the file's own lock.
    private readonly SemaphoreSlim turn = new(1, 1);

    private Database(string path, string connectionString)
    {
        Path = path;
        this.connectionString = connectionString;
    }

    /// <summary>The file.</summary>
    public string Path { get; }

    /// <summary>
    /// Opens the database, making its folder and itself where they do not exist, both for the owner only, and bringing an older one to this version's form after
    /// keeping a copy beside it, named after the instant.
    /// </summary>
    /// <exception cref="StorageException">It cannot be opened or written, is damaged, is no database, or is another program's or a newer version's.</exception>
    public static Task<Database> OpenAsync(string path, TimeProvider clock, CancellationToken stop) =>
        OpenAsync(path, clock, SchemaChange.Known(), UsualBusyTimeout, stop);

    /// <summary>The same with other changes of the form, and with another patience.</summary>
    internal static async Task<Database> OpenAsync(
        string path, TimeProvider clock, IReadOnlyList<SchemaChange> changes, TimeSpan busyTimeout, CancellationToken stop)
    {
        path = System.IO.Path.GetFullPath(path);
        DatabaseFile.Make(path);
        Database database = new(path, new SqliteConnectionStringBuilder
        {
            DataSource = path,
            Mode = SqliteOpenMode.ReadWrite,
            ForeignKeys = true,
            // Seconds for which a statement waits while another process writes.
            DefaultTimeout = (int)Math.Ceiling(busyTimeout.TotalSeconds),
        }.ConnectionString);
        try
        {
            await database.CheckAndMigrateAsync(clock, changes, stop);
        }
        catch
        {
            await database.DisposeAsync();
            throw;
        }

        return database;
    }

    /// <inheritdoc/>
    public ValueTask DisposeAsync()
    {
        using SqliteConnection pooled = new(connectionString);
        SqliteConnection.ClearPool(pooled);
        turn.Dispose();
        return ValueTask.CompletedTask;
    }

    /// <summary>Reads; several statements may see different commits.</summary>
    internal Task<T> ReadAsync<T>(Func<Work, Task<T>> read, CancellationToken stop) => ExplainingAsync(async () =>
    {
        await using SqliteConnection connection = await ConnectAsync(stop);
        return await read(new Work(connection, null, stop));
    });

    /// <summary>Writes in one transaction: all of it is kept when this returns, nothing if it throws.</summary>
    internal Task<T> WriteAsync<T>(Func<Work, Task<T>> write, CancellationToken stop) => ExplainingAsync(async () =>
    {
        await turn.WaitAsync(stop);
        try
        {
            await using SqliteConnection connection = await ConnectAsync(stop);
            await using DbTransaction transaction = await connection.BeginTransactionAsync(stop);
            T result = await write(new Work(connection, transaction, stop));
            await transaction.CommitAsync(stop);
            return result;
        }
        finally
        {
            turn.Release();
        }
    });

    private Task<bool> CheckAndMigrateAsync(TimeProvider clock, IReadOnlyList<SchemaChange> changes, CancellationToken stop) => ExplainingAsync(async () =>
    {
        await using SqliteConnection connection = await ConnectAsync(stop);
        // Asked, since SQLite quietly opens a protected file for reading alone, and lets even a writer's transaction begin on it.
        if (SQLitePCL.raw.sqlite3_db_readonly(connection.Handle, "main") == 1)
            throw SqliteFaults.MayNotBeWritten(Path);
        Work work = new(connection, null, stop);
        await work.ExecuteAsync(SqliteSql.KeepLogAhead);
        string finding = await work.SingleAsync<string>(SqliteSql.QuickCheck);
        if (finding is not "ok")
            throw SqliteFaults.Damaged(Path, finding);
        Schema.BringUpToDate(connection, Path, changes, () => DatabaseFile.BackUp(connectionString, Path, clock.GetUtcNow()));
        return true;
    });

    private async Task<SqliteConnection> ConnectAsync(CancellationToken stop)
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

    private async Task<T> ExplainingAsync<T>(Func<Task<T>> action)
    {
        try
        {
            return await action();
        }
        catch (SqliteException fault)
        {
            throw SqliteFaults.Explain(Path, fault);
        }
        catch (FormatException fault)
        {
            throw SqliteFaults.Damaged(Path, fault.Message);
        }
    }
}
