using System.Globalization;
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

    private const int RecordsAtATime = 1 << 13;

    public static void WriteJson<T>(TextWriter output, T value)
    {
        output.Write(JsonSerializer.Serialize(value, Json));
        output.Write('\n');
    }

    /// <summary>A header row, then one row for each record; a null cell is empty.</summary>
    public static void WriteCsv(TextWriter output, IReadOnlyList<string> header, IEnumerable<IReadOnlyList<string?>> rows)
    {
        using var writer = CsvWriter.Create(output, new CsvWriterOptions { HasHeader = false, NewLine = "\n" }, leaveOpen: true);
        WriteRow(writer, header);
        foreach (IReadOnlyList<string?> row in rows) WriteRow(writer, row);
        writer.Flush();
    }

    /// <summary>The same for records that are many and slow to put into words: some thousands at a time, a part of them on each core.</summary>
    public static void WriteCsv<T>(TextWriter output, IReadOnlyList<string> header, IEnumerable<T> records, Func<T, IReadOnlyList<string?>> row)
    {
        WriteCsv(output, header, []);
        foreach (T[] some in records.Chunk(RecordsAtATime))
        {
            T[][] parts = [.. some.Chunk((some.Length / Environment.ProcessorCount) + 1)];
            var texts = new StringWriter[parts.Length];
            Parallel.For(0, parts.Length, i =>
            {
                texts[i] = new StringWriter(CultureInfo.InvariantCulture);
                using var writer = CsvWriter.Create(texts[i], new CsvWriterOptions { HasHeader = false, NewLine = "\n" }, leaveOpen: true);
                foreach (T record in parts[i]) WriteRow(writer, row(record));
                writer.Flush();
            });
            foreach (StringWriter text in texts) output.Write(text.GetStringBuilder());
        }
    }

    /// <summary>The same for rows that are too many to hold; gives how many there were.</summary>
    public static async Task<long> WriteCsvAsync(TextWriter output, IReadOnlyList<string> header, IAsyncEnumerable<IReadOnlyList<string?>> rows)
    {
        using var writer = CsvWriter.Create(output, new CsvWriterOptions { HasHeader = false, NewLine = "\n" }, leaveOpen: true);
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

    private static void WriteRow(CsvWriter writer, IReadOnlyList<string?> cells)
    {
        foreach (string? cell in cells) writer.WriteField(cell ?? "");
        writer.EndRecord();
    }
}
