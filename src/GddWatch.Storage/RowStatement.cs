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
        DbCommand command = work.Connection.CreateCommand();
        command.CommandText = sql;
        command.Transaction = work.Transaction;
        var statement = new RowStatement<T>(command, [.. typeof(T).GetProperties().Where(property => IsNamed(sql, property.Name)).Select(property => (Parameter(command, property), property))]);
        await command.PrepareAsync(work.Stop);
        return statement;
    }

    /// <summary>Runs it for a row; gives how many rows of the table it concerned.</summary>
    public Task<int> ExecuteAsync(T row, CancellationToken stop)
    {
        foreach ((DbParameter parameter, PropertyInfo property) in parts) parameter.Value = property.GetValue(row) ?? DBNull.Value;
        return command.ExecuteNonQueryAsync(stop);
    }

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => command.DisposeAsync();

    private static DbParameter Parameter(DbCommand command, PropertyInfo property)
    {
        DbParameter parameter = command.CreateParameter();
        parameter.ParameterName = property.Name;
        Type type = Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType;
        parameter.DbType = Enum.Parse<DbType>(type.Name);
        command.Parameters.Add(parameter);
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
