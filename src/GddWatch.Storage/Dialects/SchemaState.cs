using DbUp.Engine;

namespace GddWatch.Storage.Dialects;

/// <summary>What a database's tables and applied changes say about it.</summary>
internal static class SchemaState
{
    /// <summary>Whether changes are missing.</summary>
    /// <exception cref="StorageException">It is another program's or a newer version's.</exception>
    public static bool Lacks(
        string where, string otherwise, IReadOnlyCollection<string> tables, string journal, IReadOnlySet<string> applied, IReadOnlyList<SchemaChange> changes)
    {
        if (tables.Count == 0) return true;
        if (!tables.Contains(journal))
        {
            throw new StorageException(
                $"The database '{where}' belongs to another program (it holds the tables {string.Join(", ", tables.Order(StringComparer.Ordinal).Take(5))}). {otherwise}");
        }

        string[] unknown = [.. applied.Except(changes.Select(change => change.Name)).Order(StringComparer.Ordinal)];
        if (unknown.Length > 0)
        {
            throw new StorageException(
                $"The database '{where}' was written by a newer version of this program (it has the change {string.Join(", ", unknown)}, unknown here). "
                + "Run that version or a later one, or put back the backup that was made before the change.");
        }

        return applied.Count < changes.Count;
    }

    /// <summary>What is told where a change failed.</summary>
    public static StorageException CouldNotChange(string where, DatabaseUpgradeResult result) => new(
        $"The database '{where}' could not be brought to this version's form: the change {result.ErrorScript?.Name} failed ({result.Error.Message}). "
        + "Nothing was changed. Go on with the version that ran before, and report this.",
        result.Error);
}
