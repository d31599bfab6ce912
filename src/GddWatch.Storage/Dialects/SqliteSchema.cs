using Dapper;
using DbUp;
using DbUp.Engine;
using DbUp.Sqlite.Helpers;
using GddWatch.Storage.Sql;
using Microsoft.Data.Sqlite;

namespace GddWatch.Storage.Dialects;

/// <summary>Brings a file to the form this version needs: forward only, all changes or none, a backup first.</summary>
internal static class SqliteSchema
{
    private const string Journal = "schema_version";

    /// <summary>Applies what is missing over an open connection that has no transaction.</summary>
    /// <param name="backUp">Keeps a copy of the database as committed; called before an existing database is changed.</param>
    public static void BringUpToDate(SqliteConnection connection, string path, IReadOnlyList<SchemaChange> changes, Action backUp)
    {
        // Also tells early of a file that is locked or may not be written; and of two programs that start together, one waits here for the other.
        connection.Execute(SqliteSql.BeginWriting);
        try
        {
            HashSet<string> tables = [.. connection.Query<string>(SqliteSql.TableNames)];
            HashSet<string> applied = tables.Contains(Journal) ? [.. connection.Query<string>(SqliteSql.AppliedChanges)] : [];
            if (SchemaState.Lacks(path, "Name another data folder.", tables, Journal, applied, changes))
            {
                if (applied.Count > 0)
                    backUp();
                Apply(connection, path, changes);
            }

            connection.Execute(SqliteSql.Commit);
        }
        catch
        {
            UndoAll(connection);
            throw;
        }
    }

    private static void UndoAll(SqliteConnection connection)
    {
        try
        {
            connection.Execute(SqliteSql.Rollback);
        }
        catch (SqliteException)
        {
            // After some faults (a full disk) SQLite has undone everything itself and finds nothing to undo; the fault that led here is the one to tell.
        }
    }

    private static void Apply(SqliteConnection connection, string path, IReadOnlyList<SchemaChange> changes)
    {
        using SharedConnection shared = new(connection);
        DatabaseUpgradeResult result = DeployChanges.To.SqliteDatabase(shared)
            .WithScripts(changes.Select(change => new SqlScript(change.Name, change.Script)))
            .JournalToSqliteTable(Journal)
            .WithVariablesDisabled()
            .WithoutTransaction() // There is one around all of it.
            .LogToNowhere()
            .Build()
            .PerformUpgrade();
        if (!result.Successful)
            throw SchemaState.CouldNotChange(path, result);
    }
}
