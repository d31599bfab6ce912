using System.Data.Common;

namespace GddWatch.Storage.Dialects;

/// <summary>What differs between the databases in which things can be kept; the statements themselves are the same wherever both understand them.</summary>
internal interface IDialect : IAsyncDisposable
{
    /// <summary>Where the database is, for people.</summary>
    string Where { get; }

    /// <summary>Whether single rows are locked, so that several can write to different ones at once.</summary>
    bool LocksRows { get; }

    /// <summary>Makes sure that the database is there, whole and of this version's form, bringing an older one to it.</summary>
    /// <exception cref="StorageException">It cannot be used.</exception>
    Task PrepareAsync(TimeProvider clock, IReadOnlyList<SchemaChange> changes, CancellationToken stop);

    /// <summary>Connects.</summary>
    Task<DbConnection> ConnectAsync(CancellationToken stop);

    /// <summary>Begins a transaction.</summary>
    /// <param name="connection">The connection.</param>
    /// <param name="alone">Whether no other writer comes between; only where rows are locked does it make a difference.</param>
    /// <param name="stop">To be stopped by.</param>
    Task<DbTransaction> BeginAsync(DbConnection connection, bool alone, CancellationToken stop);

    /// <summary>Begins a transaction in which everything is read as it is at one moment.</summary>
    Task<DbTransaction> BeginReadingAsync(DbConnection connection, CancellationToken stop);

    /// <summary>Looks for damage in the database itself, a sentence for each.</summary>
    Task<IReadOnlyList<string>> FindDamageAsync(Work work);

    /// <summary>Copies it as it is at one moment, while others go on working.</summary>
    /// <exception cref="StorageException">It cannot be copied, or not by this program.</exception>
    Task BackUpAsync(string file, CancellationToken stop);

    /// <summary>Does a piece of work, again from its beginning where the database can be waited for; what fails is told in people's words.</summary>
    /// <exception cref="StorageException">It failed.</exception>
    Task<T> PersistAsync<T>(Func<CancellationToken, Task<T>> work, CancellationToken stop);
}
