using System.Text;
using CsvHelper;
using GddWatch.Configuration.Yaml;
using GddWatch.Feeds.Faults;

namespace GddWatch.Commands.Recording;

/// <summary>Reads entries of the journal from a CSV file. A bad row does not cost the good ones theirs, and all faults are told at once.</summary>
internal sealed class JournalFile(string path)
{
    private const int LargestBytes = 20_000_000;
    private static readonly string[] NeededColumns = ["kind", "site"];
    private readonly List<Fault> faults = [];

    /// <summary>What is wrong in the file.</summary>
    public IReadOnlyList<Fault> Faults => faults;

    /// <summary>The rows with their lines; empty where the file as a whole cannot be used.</summary>
    public IReadOnlyList<(int Line, EntryText Text)> Read()
    {
        if (ReadBytes() is not { } bytes) return [];
        var rows = new List<(int, EntryText)>();
        using CsvReader reader = CsvReader.Create(bytes, Options());
        List<string>? header = null;
        while (reader.Read())
        {
            string[] cells = new string[reader.FieldCount];
            for (int i = 0; i < cells.Length; i++) cells[i] = reader.GetString(i).Trim();
            if (cells.All(cell => cell.Length == 0)) continue;
            int line = (int)reader.LineNumber;
            if (header is null)
            {
                header = [.. cells];
                if (!IsHeader(header, line)) return [];
                continue;
            }

            if (cells.Length != header.Count) Add(line, null, null, $"The row has {cells.Length} cells and the header {header.Count}.", "as many cells as the header has; a text with a comma in quotation marks");
            else rows.Add((line, Row(header, cells)));
        }

        if (header is null) Add(null, null, null, "The file is empty.", $"a header of {string.Join(", ", JournalTable.Columns)} and a row for each entry");
        return rows;
    }

    /// <summary>Adds what is wrong with an entry of the file.</summary>
    public void Add(int line, EntryFault fault) => Add(line, fault.Part, fault.Found, fault.Problem, fault.Accepted);

    private void Add(int? line, string? column, string? found, string problem, string accepted) => faults.Add(new Fault
    {
        Severity = line is null ? FaultSeverity.Refused : FaultSeverity.LeftOut,
        File = path,
        Line = line,
        Column = column,
        Found = found,
        Problem = problem,
        Accepted = $"{accepted}.",
    });

    private byte[]? ReadBytes()
    {
        try
        {
            if (new FileInfo(path) is { Exists: true, Length: > LargestBytes })
            {
                Add(null, null, null, "The file is larger than any journal.", $"at most {LargestBytes} bytes");
                return null;
            }

            byte[] bytes = File.ReadAllBytes(path);
            _ = new UTF8Encoding(false, throwOnInvalidBytes: true).GetCharCount(bytes);
            return bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble) ? bytes[Encoding.UTF8.Preamble.Length..] : bytes;
        }
        catch (DecoderFallbackException)
        {
            Add(null, null, null, "The file is not in UTF-8.", "a text file saved as UTF-8, so that ° and other signs are read as they were meant");
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            Add(null, null, null, $"The file cannot be read: {fault.Message}", "a file that exists and may be read");
        }

        return null;
    }

    private CsvReaderOptions Options() => new()
    {
        Separator = ',',
        HasHeader = false,
        TrackLineNumbers = true,
        AllowLineBreaksInQuotes = false,
        MalformedData = CsvMalformedDataHandling.Skip,
        OnMalformedRecord = bad => Add((int)bad.LineNumber, null, bad.RawRecord, "The quotation marks do not close.", "a text in quotation marks on one line, marks inside it doubled"),
    };

    private bool IsHeader(List<string> header, int line)
    {
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

        return faults.Count == 0;
    }

    private static EntryText Row(List<string> header, string[] cells)
    {
        string? Cell(string name)
        {
            int place = header.IndexOf(name);
            return place < 0 || cells[place].Length == 0 ? null : cells[place];
        }

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
