using System.Data.Common;
using GddWatch.Storage.Dialects;

namespace GddWatch.Storage;

/// <summary>Where everything is kept between passes. Writers take turns; readers see what was last committed.</summary>
public sealed class Database : IAsyncDisposable
{
    private static readonly TimeSpan UsualBusyTimeout = TimeSpan.FromSeconds(5);

    private readonly IDialect dialect;

    // Writers of this process queue here without blocking a thread or a connection each; those of other processes wait for the database's own lock.
    private readonly SemaphoreSlim turn = new(1, 1);

    private Database(IDialect dialect) => this.dialect = dialect;

    /// <summary>Where it is, for people: the file, or the database and its server.</summary>
    public string Where => dialect.Where;

    /// <summary>Whether several can write to different rows at once.</summary>
    internal bool LocksRows => dialect.LocksRows;

    /// <summary>Opens the database of a place, making it where it does not exist, and bringing an older one to this version's form.</summary>
    /// <param name="place">Where it is.</param>
    /// <param name="clock">The time, also for pauses before a server is tried again.</param>
    /// <param name="say">Told when a server does not answer and is tried again.</param>
    /// <param name="stop">To be stopped by.</param>
    /// <exception cref="StorageException">It cannot be opened or written, is damaged, is no database, or is another program's or a newer version's.</exception>
    public static Task<Database> OpenAsync(DatabasePlace place, TimeProvider clock, Action<string> say, CancellationToken stop) => place switch
    {
        DatabasePlace.InFile file => OpenAsync(file.Path, clock, stop),
        DatabasePlace.OnServer server => OpenAsync(server, clock, SchemaChange.OfPostgreSql(), Patience.Usual, say, stop),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>
    /// Opens a database in a file, making its folder and itself where they do not exist, both for the owner only, and bringing an older one to this version's form
    /// after keeping a copy beside it, named after the instant.
    /// </summary>
    /// <exception cref="StorageException">It cannot be opened or written, is damaged, is no database, or is another program's or a newer version's.</exception>
    public static Task<Database> OpenAsync(string path, TimeProvider clock, CancellationToken stop) =>
        OpenAsync(path, clock, SchemaChange.OfSqlite(), UsualBusyTimeout, stop);

    /// <summary>The same with other changes of the form, and with another patience.</summary>
    internal static Task<Database> OpenAsync(string path, TimeProvider clock, IReadOnlyList<SchemaChange> changes, TimeSpan busyTimeout, CancellationToken stop) =>
        OpenAsync(new SqliteDialect(path, busyTimeout), clock, changes, stop);

    /// <summary>A database on a server, with other changes of the form, and with another patience.</summary>
    internal static Task<Database> OpenAsync(
        DatabasePlace.OnServer place, TimeProvider clock, IReadOnlyList<SchemaChange> changes, Patience patience, Action<string> say, CancellationToken stop) =>
        OpenAsync(new PostgresDialect(place, clock, patience, say), clock, changes, stop);

    /// <summary>Copies the database as it is at one moment into a file, while others go on working; the file is there whole or not at all.</summary>
    /// <exception cref="StorageException">It cannot be copied, or it is on a server, whose own tools do that.</exception>
    public Task BackUpAsync(string file, CancellationToken stop) => dialect.BackUpAsync(Path.GetFullPath(file), stop);

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await dialect.DisposeAsync();
        turn.Dispose();
    }

    /// <summary>Reads; several statements may see different commits.</summary>
    internal Task<T> ReadAsync<T>(Func<Work, Task<T>> read, CancellationToken stop) => dialect.PersistAsync(
        async token =>
        {
            await using DbConnection connection = await dialect.ConnectAsync(token);
            return await read(new Work(connection, null, token));
        },
        stop);

    /// <summary>Reads; all statements see the same commit.</summary>
    internal Task<T> ReadAtOnceAsync<T>(Func<Work, Task<T>> read, CancellationToken stop) => dialect.PersistAsync(
        async token =>
        {
            await using DbConnection connection = await dialect.ConnectAsync(token);
            await using DbTransaction transaction = await dialect.BeginReadingAsync(connection, token);
            return await read(new Work(connection, transaction, token));
        },
        stop);

    /// <summary>Writes in one transaction: all of it is kept when this returns, nothing if it throws. No other writer comes between its statements.</summary>
    internal Task<T> WriteAsync<T>(Func<Work, Task<T>> write, CancellationToken stop) => InTurnAsync(token => CommitAsync(write, alone: true, token), stop);

    /// <summary>Does the same and undoes it: what writing would give.</summary>
    internal Task<T> WriteAndUndoAsync<T>(Func<Work, Task<T>> write, CancellationToken stop) => InTurnAsync(
        async token =>
        {
            await using DbConnection connection = await dialect.ConnectAsync(token);
            await using DbTransaction transaction = await dialect.BeginAsync(connection, alone: true, token);
            T result = await write(new Work(connection, transaction, token));
            await transaction.RollbackAsync(token);
            return result;
        },
        stop);

    /// <summary>The same for work that locks the rows that it writes: where the database does that, others may write beside it.</summary>
    internal Task<T> WriteRowsAsync<T>(Func<Work, Task<T>> write, CancellationToken stop) => dialect.LocksRows
        ? dialect.PersistAsync(token => CommitAsync(write, alone: false, token), stop)
        : WriteAsync(write, stop);

    /// <summary>A connection that stays open, for a lock that lasts; null where the statement that takes the lock says that another has it.</summary>
    internal Task<DbConnection?> HoldAsync(string take, CancellationToken stop) => dialect.PersistAsync(
        async token =>
        {
            DbConnection connection = await dialect.ConnectAsync(token);
            bool isOurs = false;
            try
            {
                isOurs = await new Work(connection, null, token).SingleAsync<bool>(take);
            }
            finally
            {
                if (!isOurs) await connection.DisposeAsync();
            }

            return isOurs ? connection : null;
        },
        stop);

    /// <summary>Looks for damage in the database itself, a sentence for each.</summary>
    internal Task<IReadOnlyList<string>> FindDamageAsync(Work work) => dialect.FindDamageAsync(work);

    private Task<T> InTurnAsync<T>(Func<CancellationToken, Task<T>> write, CancellationToken stop) => dialect.PersistAsync(
        async token =>
        {
            await turn.WaitAsync(token);
            try
            {
                return await write(token);
            }
            finally
            {
                turn.Release();
            }
        },
        stop);

    private static async Task<Database> OpenAsync(IDialect dialect, TimeProvider clock, IReadOnlyList<SchemaChange> changes, CancellationToken stop)
    {
        Database database = new(dialect);
        try
        {
            await dialect.PrepareAsync(clock, changes, stop);
            return database;
        }
        catch
        {
            await database.DisposeAsync();
            throw;
        }
    }

    private async Task<T> CommitAsync<T>(Func<Work, Task<T>> write, bool alone, CancellationToken stop)
    {
        await using DbConnection connection = await dialect.ConnectAsync(stop);
        await using DbTransaction transaction = await dialect.BeginAsync(connection, alone, stop);
        T result = await write(new Work(connection, transaction, stop));
        await transaction.CommitAsync(stop);
        return result;
    }
}
