using System.Data;
using System.Data.Common;
using DbUp;
using DbUp.Engine;
using DbUp.Postgresql;
using GddWatch.Storage.Sql;
using Npgsql;
using Polly;

namespace GddWatch.Storage.Dialects;

/// <summary>
/// A database on a PostgreSQL server. Writers take turns as in a file, except for the queue, whose rows are locked one by one. A server that is gone for a while
/// is waited for: a piece of work is one transaction, so it is done again from its beginning.
/// </summary>
internal sealed class PostgresDialect : IDialect
{
    private const string Journal = "schema_version";

    private readonly NpgsqlDataSource source;
    private readonly ResiliencePipeline patience;

    public PostgresDialect(DatabasePlace.OnServer place, TimeProvider clock, Patience patience, Action<string> say)
    {
        Where = place.ToString();
        source = NpgsqlDataSource.Create(place.Connection);
        this.patience = patience.Pipeline(clock, PostgresFaults.MayPass, (fault, pause) => say(PostgresFaults.Waiting(Where, fault, pause)));
    }

    public string Where { get; }

    public bool LocksRows => true;

    /// <summary>What every connection needs beside what was configured.</summary>
    public static string Complete(NpgsqlConnectionStringBuilder configured)
    {
        // Given along when connecting, since what is set later is forgotten when a connection goes back into the pool. A lock is not waited for without end, and a
        // client that vanished inside a transaction does not hold up the others for ever.
        configured.Options = $"{configured.Options} -c lock_timeout=30s -c idle_in_transaction_session_timeout=120s".Trim();
        configured.ApplicationName ??= "gddwatch";
        if (!configured.ShouldSerialize("Maximum Pool Size")) configured.MaxPoolSize = 20;
        if (!configured.ShouldSerialize("Max Auto Prepare")) configured.MaxAutoPrepare = 40;
        // Finds out that the other side is gone even where nothing is sent; the seat of the judge rests on a connection that mostly does nothing.
        if (!configured.ShouldSerialize("Keepalive")) configured.KeepAlive = 30;
        return configured.ConnectionString;
    }

    public ValueTask DisposeAsync() => source.DisposeAsync();

    public Task PrepareAsync(TimeProvider clock, IReadOnlyList<SchemaChange> changes, CancellationToken stop) => PersistAsync(
        async token =>
        {
            await using DbConnection connection = await ConnectAsync(token);
            Work work = new(connection, null, token);
            // Of two programs that start together, one waits here for the other.
            await work.ExecuteAsync(PostgresSql.WaitForForm);
            try
            {
                HashSet<string> tables = [.. await work.QueryAsync<string>(PostgresSql.TableNames)];
                HashSet<string> applied = tables.Contains(Journal) ? [.. await work.QueryAsync<string>(PostgresSql.AppliedChanges)] : [];
                if (SchemaState.Lacks(Where, "Name another database.", tables, Journal, applied, changes)) Apply(await work.SingleAsync<string>(PostgresSql.SchemaName), changes);
            }
            finally
            {
                await connection.FreeAsync(PostgresSql.FreeForm);
            }

            return true;
        },
        stop);

    public async Task<DbConnection> ConnectAsync(CancellationToken stop) => await source.OpenConnectionAsync(stop);

    public async Task<DbTransaction> BeginAsync(DbConnection connection, bool alone, CancellationToken stop)
    {
        DbTransaction transaction = await connection.BeginTransactionAsync(stop);
        if (alone) await new Work(connection, transaction, stop).ExecuteAsync(PostgresSql.WaitForWriting);
        return transaction;
    }

    public async Task<DbTransaction> BeginReadingAsync(DbConnection connection, CancellationToken stop) => await connection.BeginTransactionAsync(IsolationLevel.RepeatableRead, stop);

    public async Task<IReadOnlyList<string>> FindDamageAsync(Work work) => await work.SingleAsync<bool>(PostgresSql.WaitsForDisk)
        ? []
        : ["The server is set to say that something is kept before it is on the disk (fsync or synchronous_commit is off): after a power cut a mail may go out twice."];

    public Task BackUpAsync(string file, CancellationToken stop) => throw new StorageException(
        $"The database '{Where}' is on a server, whose own tools copy it while it is in use: pg_dump --format=custom --file=FILE, with the server, database and user of Storage:Connection. "
        + "`gddwatch keep export` writes what is kept to open formats. Nothing was written.");

    public async Task<T> PersistAsync<T>(Func<CancellationToken, Task<T>> work, CancellationToken stop)
    {
        try
        {
            return await SilentServer.NotWaitForAsync(told => patience.ExecuteAsync(async token => await work(token), told).AsTask(), stop);
        }
        catch (FormatException fault)
        {
            throw new StorageException($"What is kept in the database {Where} cannot be read ({fault.Message}). Put back the latest backup, or mend that row.", fault);
        }
        catch (Exception fault) when (PostgresFaults.IsFault(fault))
        {
            throw PostgresFaults.Explain(Where, fault);
        }
    }

    private void Apply(string schema, IReadOnlyList<SchemaChange> changes)
    {
        // All of them in one transaction of their own connection.
        DatabaseUpgradeResult result = DeployChanges.To.PostgresqlDatabase(new PostgresqlConnectionManager(source))
            .WithScripts(changes.Select(change => new SqlScript(change.Name, change.Script)))
            .JournalToPostgresqlTable(schema, Journal)
            .WithVariablesDisabled()
            .WithTransaction()
            .LogToNowhere()
            .Build()
            .PerformUpgrade();
        if (result.Successful) return;
        if (PostgresFaults.MayPass(result.Error)) throw result.Error;
        throw SchemaState.CouldNotChange(Where, result);
    }
}
