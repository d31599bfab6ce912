using System.Reflection;

namespace GddWatch.Storage;

/// <summary>One step of the database's form: a script that is run once, never changed afterwards and never undone.</summary>
/// <param name="Name">Its file's name; the names are in the order in which they are run.</param>
/// <param name="Script">Its statements.</param>
internal sealed record SchemaChange(string Name, string Script)
{
    private const string Folder = "Migrations/";

    /// <summary>The changes this version knows, in order.</summary>
    public static IReadOnlyList<SchemaChange> Known()
    {
        Assembly assembly = typeof(SchemaChange).Assembly;
        return [.. assembly.GetManifestResourceNames()
            .Where(name => name.StartsWith(Folder, StringComparison.Ordinal))
            .Order(StringComparer.Ordinal)
            .Select(name => new SchemaChange(name[Folder.Length..], Read(assembly, name)))];
    }

    private static string Read(Assembly assembly, string name)
    {
        using Stream stream = assembly.GetManifestResourceStream(name)!;
        using StreamReader reader = new(stream);
        return reader.ReadToEnd();
    }
}
