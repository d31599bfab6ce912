using System.Data.Common;
using System.Globalization;
using Dapper;

namespace GddWatch.Storage;

/// <summary>A piece of work on the database: statements over one connection, in one transaction where it writes.</summary>
internal readonly record struct Work(DbConnection Connection, DbTransaction? Transaction, CancellationToken Stop)
{
    public Task<int> ExecuteAsync(string sql, object? values = null) => Connection.ExecuteAsync(Command(sql, values));

    /// <summary>The same statement for each of several rows, prepared once; gives how many rows of the table were concerned.</summary>
    public async Task<int> ExecuteEachAsync<T>(string sql, IEnumerable<T> rows)
        where T : class
    {
        int concerned = 0;
        RowStatement<T>? statement = null;
        try
        {
            foreach (T row in rows)
            {
                statement ??= await RowStatement<T>.PrepareAsync(this, sql);
                concerned += await statement.ExecuteAsync(row, Stop);
            }
        }
        finally
        {
            if (statement is not null) await statement.DisposeAsync();
        }

        return concerned;
    }

    public Task<IEnumerable<T>> QueryAsync<T>(string sql, object? values = null) => Connection.QueryAsync<T>(Command(sql, values));

    /// <summary>Rows as they come, for those that are too many to hold.</summary>
    public IAsyncEnumerable<T> StreamAsync<T>(string sql) => Connection.QueryUnbufferedAsync<T>(sql, transaction: Transaction);

    /// <summary>Rows as they come, read in place: for millions of them.</summary>
    public async Task ReadEachAsync(string sql, Action<DbDataReader> read)
    {
        await using DbDataReader reader = await Connection.ExecuteReaderAsync(Command(sql, null));
        while (await reader.ReadAsync(Stop)) read(reader);
    }

    /// <summary>Rows as they come, in cells: text as it is, numbers as the shortest text that reads back as the same; null where there is nothing.</summary>
    public async IAsyncEnumerable<IReadOnlyList<string?>> StreamCellsAsync(string sql)
    {
        await using DbDataReader reader = await Connection.ExecuteReaderAsync(Command(sql, null));
        while (await reader.ReadAsync(Stop))
        {
            var cells = new string?[reader.FieldCount];
            for (int i = 0; i < cells.Length; i++) cells[i] = await reader.IsDBNullAsync(i, Stop) ? null : Convert.ToString(reader.GetValue(i), CultureInfo.InvariantCulture);
            yield return cells;
        }
    }

    public Task<T> SingleAsync<T>(string sql, object? values = null) => Connection.QuerySingleAsync<T>(Command(sql, values));

    public Task<T?> FindAsync<T>(string sql, object? values = null) => Connection.QuerySingleOrDefaultAsync<T>(Command(sql, values));

    private CommandDefinition Command(string sql, object? values) => new(sql, values, Transaction, cancellationToken: Stop);
}
