using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Data.Sqlite;

namespace GddWatch.Tests.Crash;

/// <summary>A database as it lies on the disk, read from a copy, so that nothing but the program itself mends what a kill left.</summary>
internal sealed partial class KeptTables
{
    /// <summary>What may differ between a disturbed and an undisturbed life: how often a message was tried, and the counter behind its order.</summary>
    private static readonly string[] Incidental = ["attempts", "queue_order"];

    private KeptTables(IReadOnlyList<string> rows, IReadOnlyDictionary<string, (string State, bool IsClaimed)> messages, DateOnly? judged, bool isCutOff)
    {
        Rows = rows;
        Messages = messages;
        Judged = judged;
        IsCutOff = isCutOff;
    }

    /// <summary>Every row of every table; of an instant its day alone, since a pass that was killed is made again later on the same day.</summary>
    public IReadOnlyList<string> Rows { get; }

    public IReadOnlyDictionary<string, (string State, bool IsClaimed)> Messages { get; }

    /// <summary>The last day that was judged.</summary>
    public DateOnly? Judged { get; }

    /// <summary>Whether the writing of a transaction was cut off.</summary>
    public bool IsCutOff { get; }

    /// <summary>The tables; paths in them, which name feeds, are given from the folder of the configuration on.</summary>
    public static KeptTables Read(string database)
    {
        DirectoryInfo copies = Directory.CreateTempSubdirectory("gddwatch-copy-");
        try
        {
            string home = Path.GetDirectoryName(Path.GetDirectoryName(database)!)!;
            if (!File.Exists(database)) return new KeptTables([], new Dictionary<string, (string, bool)>(), null, false);
            string copy = Path.Combine(copies.FullName, "copy.db");
            File.Copy(database, copy);
            byte[] log = File.Exists($"{database}-wal") ? File.ReadAllBytes($"{database}-wal") : [];
            File.WriteAllBytes($"{copy}-wal", log);
            using var connection = new SqliteConnection($"Data Source={copy};Pooling=False");
            connection.Open();
            string[] tables = [.. Query(connection, "select name from sqlite_schema where type = 'table' and name not like 'sqlite_%' order by name").Select(row => row[0].Value)];
            if (!tables.Contains("message")) return new KeptTables([], new Dictionary<string, (string, bool)>(), null, LogTail.IsCutOff(log));
            string? judged = Query(connection, "select coalesce(max(judged_on), '') as judged_on from judged_site").Single()[0].Value;
            return new KeptTables(
                [.. tables.Where(table => table != "schema_version").SelectMany(table => Query(connection, $"select * from {table}").Select(row => $"{table}: {Text(row).Replace(home, "", StringComparison.Ordinal)}").Order(StringComparer.Ordinal))],
                Query(connection, "select message_id, state, claim_owner from message").ToDictionary(row => row[0].Value, row => (row[1].Value, row[2].Value.Length > 0), StringComparer.Ordinal),
                judged.Length == 0 ? null : DateOnly.Parse(judged, CultureInfo.InvariantCulture),
                LogTail.IsCutOff(log));
        }
        finally
        {
            copies.Delete(recursive: true);
        }
    }

    private static string Text((string Name, string Value)[] row) =>
        string.Join(" | ", row.Where(cell => !Incidental.Contains(cell.Name)).Select(cell => $"{cell.Name}={Instant().Replace(cell.Value, "${day}")}"));

    private static List<(string Name, string Value)[]> Query(SqliteConnection connection, string sql)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = sql;
        using SqliteDataReader reader = command.ExecuteReader();
        var rows = new List<(string, string)[]>();
        while (reader.Read())
            rows.Add([.. Enumerable.Range(0, reader.FieldCount).Select(i => (reader.GetName(i), Convert.ToString(reader.GetValue(i), CultureInfo.InvariantCulture) ?? ""))]);
        return rows;
    }

    [GeneratedRegex(@"(?<day>\d{4}-\d\d-\d\d)T\d\d:\d\d:\d\d[.\d]*(?:Z|[+-]\d\d:\d\d)?", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Instant();
}
