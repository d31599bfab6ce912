using System.Data.Common;
using GddWatch.Storage;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Time.Testing;
using Npgsql;

namespace GddWatch.Tests.Storage;

/// <summary>A database of its own for one test, in a file or on the server.</summary>
internal sealed class TestDatabase(DatabaseKind kind) : IAsyncDisposable
{
    private readonly TemporaryFolder folder = new();
    private DatabasePlace? place;
    private string connection = "";

    /// <summary>Where it is; made at the first call.</summary>
    public async Task<DatabasePlace> PlaceAsync()
    {
        if (place is not null) return place;
        if (kind == DatabaseKind.File)
        {
            connection = $"Data Source={folder.File("a.db")};Pooling=False";
            return place = new DatabasePlace.InFile(folder.File("a.db"));
        }

        PostgresCluster cluster = await PostgresCluster.SharedAsync();
        DatabasePlace.OnServer made = await cluster.NewAsync();
        connection = $"{cluster.Connection(made.ToString().Split(' ')[0])};Pooling=false";
        return place = made;
    }

    /// <summary>Opens it, once more each time.</summary>
    public async Task<Database> OpenAsync(CancellationToken stop) => await Database.OpenAsync(await PlaceAsync(), new FakeTimeProvider(Kept.Morning), _ => { }, stop);

    /// <summary>A connection of the provider itself, past the stores.</summary>
    public async Task<DbConnection> ConnectAsync(CancellationToken stop)
    {
        await PlaceAsync();
        DbConnection raw = kind == DatabaseKind.File ? new SqliteConnection(connection) : new NpgsqlConnection(connection);
        await raw.OpenAsync(stop);
        return raw;
    }

    /// <summary>Runs a statement past the stores.</summary>
    public async Task<int> RunAsync(string sql, CancellationToken stop)
    {
        await using DbConnection raw = await ConnectAsync(stop);
        await using DbCommand command = raw.CreateCommand();
#pragma warning disable CA2100 // The test's own words.
        command.CommandText = sql;
#pragma warning restore CA2100
        return await command.ExecuteNonQueryAsync(stop);
    }

    /// <summary>Takes all that was kept out of it.</summary>
    public Task EmptyAsync(CancellationToken stop) => RunAsync(
        "delete from told; delete from message; delete from kept_window; delete from judged_site; delete from region_value; delete from refusing_address; delete from journal_entry", stop);

    public ValueTask DisposeAsync()
    {
        folder.Dispose();
        return ValueTask.CompletedTask;
    }
}
