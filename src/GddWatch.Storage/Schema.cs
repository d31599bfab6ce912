using Dapper;
using DbUp;
using DbUp.Engine;
using DbUp.Sqlite.Helpers;
using GddWatch.Storage.Sql;
using Microsoft.Data.Sqlite;

namespace GddWatch.Storage;

/// <summary>Brings a database to the form this version needs: forward only, all changes or none, a backup first.</summary>
internal static class Schema
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
            HashSet<string> applied = Applied(connection, path, changes);
            if (applied.Count < changes.Count)
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

    private static HashSet<string> Applied(SqliteConnection connection, string path, IReadOnlyList<SchemaChange> changes)
    {
        HashSet<string> tables = [.. connection.Query<string>(SqliteSql.TableNames)];
        if (tables.Count == 0)
            return [];
        if (!tables.Contains(Journal))
        {
            throw new StorageException(
                $"The database '{path}' belongs to another program (it holds the tables {string.Join(", ", tables.Order(StringComparer.Ordinal).Take(5))}). "
                + "Name another data folder.");
        }

        HashSet<string> applied = [.. connection.Query<string>(SqliteSql.AppliedChanges)];
        string[] unknown = [.. applied.Except(changes.Select(change => change.Name)).Order(StringComparer.Ordinal)];
        if (unknown.Length > 0)
        {
            throw new StorageException(
                $"The database '{path}' was written by a newer version of this program (it has the change {string.Join(", ", unknown)}, unknown here). "
                + "Run that version or a later one, or put back the backup that was made before the change.");
        }

        return applied;
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
        {
            throw new StorageException(
                $"The database '{path}' could not be brought to this version's form: the change {result.ErrorScript?.Name} failed ({result.Error.Message}). "
                + "Nothing was changed. Go on with the version that ran before, and report this.",
                result.Error);
        }
    }
}
