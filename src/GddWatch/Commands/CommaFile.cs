using System.Text;
using CsvHelper;
using GddWatch.Feeds.Faults;

namespace GddWatch.Commands;

/// <summary>A small file of cells between commas that a person hands to a command: its bytes, its faults, and how strictly it is read.</summary>
/// <param name="path">The file.</param>
/// <param name="kind">What it is larger than then, such as "journal".</param>
internal sealed class CommaFile(string path, string kind)
{
    /// <summary>What no file that people write or export by hand exceeds [bytes].</summary>
    private const int LargestBytes = 20_000_000;

    private readonly List<Fault> faults = [];

    /// <summary>What is wrong in the file.</summary>
    public IReadOnlyList<Fault> Faults => faults;

    /// <summary>Its bytes without a byte order mark; null, with a fault, where it cannot be read, is too large or is not in UTF-8.</summary>
    public byte[]? ReadBytes()
    {
        try
        {
            if (new FileInfo(path) is { Exists: true } file && file.Length > LargestBytes)
            {
                Add(null, null, null, $"The file is larger than any {kind}.", $"at most {LargestBytes} bytes");
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

    /// <summary>How it is read: strictly, with the line of each fault.</summary>
    public CsvReaderOptions Options() => new()
    {
        Separator = ',',
        HasHeader = false,
        TrackLineNumbers = true,
        AllowLineBreaksInQuotes = false,
        MalformedData = CsvMalformedDataHandling.Skip,
        OnMalformedRecord = bad => Add((int)bad.LineNumber, null, bad.RawRecord, "The quotation marks do not close.", "a text in quotation marks on one line, marks inside it doubled"),
    };

    /// <summary>Says where a row has more cells than the header or fewer.</summary>
    public void AddWrongNumberOfCells(int line, IReadOnlyList<string> header, IReadOnlyList<string> cells)
    {
        bool isShort = cells.Count < header.Count;
        Add(
            line, isShort ? header[cells.Count] : null, isShort ? null : cells[header.Count],
            $"The row has {cells.Count} cells and the header {header.Count}: {(isShort ? "this one is the first that is missing" : "this is the first one too many")}.",
            "as many cells as the header has; a text with a comma in quotation marks");
    }

    /// <summary>Adds a fault: of a line that is left out, or of the whole file where there is no line.</summary>
    public void Add(int? line, string? column, string? found, string problem, string accepted) => faults.Add(new Fault
    {
        Severity = line is null ? FaultSeverity.Refused : FaultSeverity.LeftOut,
        File = path,
        Line = line,
        Column = column,
        Found = found,
        Problem = problem,
        Accepted = $"{accepted}.",
    });
}
