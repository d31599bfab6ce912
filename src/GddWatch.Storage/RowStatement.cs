using System.Data;
using System.Data.Common;
using System.Reflection;

namespace GddWatch.Storage;

/// <summary>A statement that is prepared once and run for many rows; each of its parameters is named after a property of the row.</summary>
/// <typeparam name="T">The row.</typeparam>
internal sealed class RowStatement<T> : IAsyncDisposable
    where T : class
{
    private readonly DbCommand command;
    private readonly (DbParameter Parameter, PropertyInfo Property)[] parts;

    private RowStatement(DbCommand command, (DbParameter, PropertyInfo)[] parts)
    {
        this.command = command;
        this.parts = parts;
    }

    /// <summary>Prepares it.</summary>
    public static async Task<RowStatement<T>> PrepareAsync(Work work, string sql)
    {
        DbCommand prepared = work.Connection.CreateCommand();
        prepared.CommandText = sql;
        prepared.Transaction = work.Transaction;
        (DbParameter, PropertyInfo)[] named = [.. typeof(T).GetProperties().Where(property => IsNamed(sql, property.Name)).Select(property => (Parameter(prepared, property), property))];
        await prepared.PrepareAsync(work.Stop);
        return new RowStatement<T>(prepared, named);
    }

    /// <summary>Runs it for a row; gives how many rows of the table it concerned.</summary>
    public Task<int> ExecuteAsync(T row, CancellationToken stop)
    {
        foreach ((DbParameter parameter, PropertyInfo property) in parts) parameter.Value = property.GetValue(row) ?? DBNull.Value;
        return command.ExecuteNonQueryAsync(stop);
    }

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => command.DisposeAsync();

    private static DbParameter Parameter(DbCommand of, PropertyInfo property)
    {
        DbParameter parameter = of.CreateParameter();
        parameter.ParameterName = property.Name;
        Type type = Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType;
        parameter.DbType = Enum.Parse<DbType>(type.Name);
        of.Parameters.Add(parameter);
        return parameter;
    }

    private static bool IsNamed(string sql, string name)
    {
        for (int at = sql.IndexOf($"@{name}", StringComparison.Ordinal); at >= 0; at = sql.IndexOf($"@{name}", at + 1, StringComparison.Ordinal))
        {
            int end = at + 1 + name.Length;
            if (end == sql.Length || !(char.IsLetterOrDigit(sql[end]) || sql[end] == '_')) return true;
        }

        return false;
    }
}
