using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using CsvHelper;

namespace GddWatch.Commands.Output;

/// <summary>Output that programs read: metric, decimal point, UTF-8, LF, ISO dates.</summary>
internal static class ProgramText
{
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        NewLine = "\n",
        DefaultIgnoreCondition = JsonIgnoreCondition.Never,
        // Written to a terminal or a file, never into a page: degree signs stay readable.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static void WriteJson<T>(TextWriter output, T value)
    {
        output.Write(JsonSerializer.Serialize(value, Json));
        output.Write('\n');
    }

    /// <summary>A header row, then one row for each record; a null cell is empty.</summary>
    public static void WriteCsv(TextWriter output, IReadOnlyList<string> header, IEnumerable<IReadOnlyList<string?>> rows)
    {
        using CsvWriter writer = WriterTo(output);
        WriteRow(writer, header);
        foreach (IReadOnlyList<string?> row in rows) WriteRow(writer, row);
        writer.Flush();
    }

    /// <summary>Rows without a header.</summary>
    public static StringBuilder RowsInCsv(IEnumerable<IReadOnlyList<string?>> rows)
    {
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        using CsvWriter writer = WriterTo(text);
        foreach (IReadOnlyList<string?> row in rows) WriteRow(writer, row);
        writer.Flush();
        return text.GetStringBuilder();
    }

    /// <summary>The same for rows that are too many to hold; gives how many there were.</summary>
    public static async Task<long> WriteCsvAsync(TextWriter output, IReadOnlyList<string> header, IAsyncEnumerable<IReadOnlyList<string?>> rows)
    {
        using CsvWriter writer = WriterTo(output);
        WriteRow(writer, header);
        long count = 0;
        await foreach (IReadOnlyList<string?> row in rows)
        {
            WriteRow(writer, row);
            count++;
        }

        writer.Flush();
        return count;
    }

    private static CsvWriter WriterTo(TextWriter output) => CsvWriter.Create(output, new CsvWriterOptions { HasHeader = false, NewLine = "\n" }, leaveOpen: true);

    private static void WriteRow(CsvWriter writer, IReadOnlyList<string?> cells)
    {
        foreach (string? cell in cells) writer.WriteField(cell ?? "");
        writer.EndRecord();
    }
}
