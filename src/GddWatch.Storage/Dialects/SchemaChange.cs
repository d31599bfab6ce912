using System.Reflection;

namespace GddWatch.Storage.Dialects;

/// <summary>One step of the database's form: a script that is run once, never changed afterwards and never undone.</summary>
/// <param name="Name">Its file's name, the same for each kind of database; the names are in the order in which they are run.</param>
/// <param name="Script">Its statements.</param>
internal sealed record SchemaChange(string Name, string Script)
{
    private const string SqliteFolder = "Migrations/Sqlite/";
    private const string PostgreSqlFolder = "Migrations/PostgreSql/";

    /// <summary>The changes this version knows of a file of SQLite, in order.</summary>
    public static IReadOnlyList<SchemaChange> OfSqlite() => In(SqliteFolder);

    /// <summary>The changes this version knows of a database on a PostgreSQL server, in order.</summary>
    public static IReadOnlyList<SchemaChange> OfPostgreSql() => In(PostgreSqlFolder);

    private static IReadOnlyList<SchemaChange> In(string folder)
    {
        Assembly assembly = typeof(SchemaChange).Assembly;
        return [.. assembly.GetManifestResourceNames()
            .Where(name => name.StartsWith(folder, StringComparison.Ordinal))
            .Order(StringComparer.Ordinal)
            .Select(name => new SchemaChange(name[folder.Length..], Read(assembly, name)))];
    }

    private static string Read(Assembly assembly, string name)
    {
        using Stream stream = assembly.GetManifestResourceStream(name)!;
        using StreamReader reader = new(stream);
        return reader.ReadToEnd();
    }
}
