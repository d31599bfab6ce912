using CsvHelper;
using GddWatch.Agronomy.Journal;
using GddWatch.Configuration.Yaml;
using GddWatch.Feeds.Faults;
using GddWatch.Storage;

namespace GddWatch.Commands.Recording;

/// <summary>Reads entries of the journal from a CSV file. A bad row does not cost the good ones theirs, and all faults are told at once.</summary>
internal sealed class JournalFile(string path)
{
    private static readonly string[] NeededColumns = ["kind", "site"];
    private static readonly string[] OtherSeparators = [";", "\t"];
    private readonly CommaFile file = new(path, "journal");

    /// <summary>What is wrong in the file.</summary>
    public IReadOnlyList<Fault> Faults => file.Faults;

    /// <summary>Whether the file was one and had a header, so that its rows could be looked at.</summary>
    public bool HasHeader { get; private set; }

    /// <summary>How many rows tell of entries that were mended or withdrawn, as an export of the whole history has them; they are not read.</summary>
    public int RowsOfHistory { get; private set; }

    /// <summary>The entries with their lines. Two rows that say different things about the same thing cannot both stand: the first one does, the other is a fault.</summary>
    public IReadOnlyList<(int Line, JournalEntry Entry)> ReadEntries(EntryReader reader)
    {
        var entries = new List<(int Line, JournalEntry Entry)>();
        var first = new Dictionary<string, (int Line, JournalEntry Entry)>(StringComparer.Ordinal);
        foreach ((int line, EntryText text) in Read())
        {
            var wrong = new List<EntryFault>();
            JournalEntry? entry = reader.Read(text, wrong) is { } read ? JournalKinds.AsKept(read) : null;
            foreach (EntryFault fault in wrong) Add(line, fault.Part, fault.Found, fault.Problem, fault.Accepted);
            if (entry is null) continue;
            if (first.TryAdd(JournalKinds.Identity(entry), (line, entry)) || first[JournalKinds.Identity(entry)].Entry == entry) entries.Add((line, entry));
            else Add(line, null, null, $"Line {first[JournalKinds.Identity(entry)].Line} says otherwise of the same thing on the same day.", "one row for it");
        }

        return entries;
    }

    /// <summary>The rows with their lines; empty where the file as a whole cannot be used.</summary>
    private List<(int Line, EntryText Text)> Read()
    {
        if (file.ReadBytes() is not { } bytes) return [];
        var rows = new List<(int, EntryText)>();
        using CsvReader reader = CsvReader.Create(bytes, file.Options());
        List<string>? header = null;
        while (reader.Read())
        {
            string[] cells = new string[reader.FieldCount];
            for (int i = 0; i < cells.Length; i++) cells[i] = reader.GetString(i).Trim();
            if (cells.All(cell => cell.Length == 0)) continue;
            int line = (int)reader.LineNumber;
            if (header is null)
            {
                // The line before this one was to be the header and could not be read: this one is none.
                if (Faults.Count > 0) return [];
                header = [.. cells];
                HasHeader = IsHeader(header, line);
                if (!HasHeader) return [];
                continue;
            }

            if (cells.Length != header.Count) file.AddWrongNumberOfCells(line, header, cells);
            else if (IsHistory(header, cells)) RowsOfHistory++;
            else rows.Add((line, Row(header, cells)));
        }

        if (header is null && Faults.Count == 0) Add(null, null, null, "The file is empty.", $"a header of {string.Join(", ", JournalTable.Columns)} and a row for each entry");
        return rows;
    }

    private void Add(int? line, string? column, string? found, string problem, string accepted) => file.Add(line, column, found, problem, accepted);

    private bool IsHeader(List<string> header, int line)
    {
        if (header is [{ } only] && OtherSeparators.FirstOrDefault(only.Contains) is { Length: > 0 } other)
        {
            Add(line, null, only, "The cells are not divided by commas.", $"commas between the cells, where this file has {(other == ";" ? "semicolons" : "tabs")}");
            return false;
        }

        foreach (string name in header.Where(name => !JournalTable.ColumnsWithHistory.Contains(name)))
        {
            Add(line, name, name, "There is no such column.", NearestWord.Hint(name, [.. JournalTable.Columns]));
        }

        foreach (string name in header.GroupBy(name => name, StringComparer.Ordinal).Where(group => group.Count() > 1).Select(group => group.Key))
        {
            Add(line, name, name, "This column is there twice.", "each column once");
        }

        foreach (string needed in NeededColumns.Where(needed => !header.Contains(needed)))
        {
            Add(line, needed, null, $"The column {needed} is missing.", "a header with at least kind, site, and on or at");
        }

        return Faults.Count == 0;
    }

    private static bool IsHistory(List<string> header, string[] cells) => (CellOf(header, cells, "replaced-by") ?? CellOf(header, cells, "withdrawn-at")) is not null;

    private static string? CellOf(List<string> header, string[] cells, string name)
    {
        int place = header.IndexOf(name);
        return place < 0 || cells[place].Length == 0 ? null : cells[place];
    }

    private static EntryText Row(List<string> header, string[] cells)
    {
        string? Cell(string name) => CellOf(header, cells, name);

        string? kind = Cell("kind");
        // A row says its day: nothing written is a fault here, not today.
        string? on = Cell("on") ?? (kind is "done" or "sighting" or "mowing" ? "" : null);
        return new EntryText
        {
            Kind = kind,
            Site = Cell("site"),
            On = on,
            At = Cell("at"),
            Treatment = Cell("treatment"),
            Active = Cell("active"),
            NoSeedUntil = Cell("no-seed-until"),
            What = Cell("what"),
            Depth = Cell("depth"),
            Value = Cell("value"),
            Note = Cell("note"),
        };
    }
}
