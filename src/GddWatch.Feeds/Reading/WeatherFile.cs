using System.Text;
using GddWatch.Feeds.Faults;

namespace GddWatch.Feeds.Reading;

/// <summary>
/// A text file as bytes of UTF-8. The whole file is taken at once, so that all lines are of one moment, and so that one endless line cannot stop the reading of the
/// others as it would in a stream.
/// </summary>
internal sealed class WeatherFile
{
    private const int LargestBytes = 1 << 30;
    private const int BeginningBytes = 16;
    private static readonly TimeSpan JustNow = TimeSpan.FromMinutes(1);

    private WeatherFile(string name, ReadOnlyMemory<byte> text)
    {
        Name = name;
        Text = text;
    }

    /// <summary>The file as people call it.</summary>
    public string Name { get; }

    /// <summary>The text in UTF-8 without a byte order mark; a last line that is still being written is not in it.</summary>
    public ReadOnlyMemory<byte> Text { get; }

    /// <summary>Reads a file while others may write, rename or delete it. Null where it cannot be used; the faults say why.</summary>
    public static async Task<WeatherFile?> ReadAsync(string path, string name, TimeProvider clock, FaultList faults, CancellationToken stop)
    {
        try
        {
            if (Directory.Exists(path)) return Refuse(faults, FileFaults.IsAFolder(name));
            DateTimeOffset changed = new(File.GetLastWriteTimeUtc(path));
            await using FileStream stream = new(
                path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, bufferSize: 0, FileOptions.Asynchronous | FileOptions.SequentialScan);
            long length = stream.Length;
            if (length > LargestBytes) return Refuse(faults, FileFaults.TooLarge(name, length));
            var bytes = new byte[length];
            int read = await stream.ReadAtLeastAsync(bytes, bytes.Length, throwOnEndOfStream: false, stop);
            bool isBeingWritten = (clock.GetUtcNow() - changed).Duration() < JustNow || RandomAccess.GetLength(stream.SafeFileHandle) != length;
            return FromBytes(name, bytes.AsMemory(0, read), isBeingWritten, faults);
        }
        catch (Exception failure) when (failure is FileNotFoundException or DirectoryNotFoundException)
        {
            return Refuse(faults, FileFaults.Missing(name, path));
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            return Refuse(faults, FileFaults.Unreadable(name));
        }
    }

    private static WeatherFile? FromBytes(string name, ReadOnlyMemory<byte> bytes, bool isBeingWritten, FaultList faults)
    {
        ReadOnlyMemory<byte> text = AsUtf8(bytes);
        if (text.Span.TrimEnd(" \t\r\n"u8).IsEmpty) return Refuse(faults, FileFaults.Empty(name));
        // Spreadsheets, pictures and archives have a zero byte in their first few bytes, as text in UTF-16 without its mark has. One further on costs its line.
        if (text.Span[..Math.Min(text.Length, BeginningBytes)].Contains((byte)0)) return Refuse(faults, FileFaults.NotText(name));
        int end = text.Span.LastIndexOfAny((byte)'\n', (byte)'\r') + 1;
        if (isBeingWritten && end < text.Length)
        {
            faults.Add(FaultKind.WrittenWhileRead, FileFaults.Unfinished(name, CountLines(text.Span[..end]) + 1, Encoding.UTF8.GetString(text.Span[end..])));
            text = text[..end];
        }

        return new WeatherFile(name, text);
    }

    private static ReadOnlyMemory<byte> AsUtf8(ReadOnlyMemory<byte> bytes)
    {
        ReadOnlySpan<byte> span = bytes.Span;
        if (span.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF])) return bytes[3..];
        if (span.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE])) return Encoding.Convert(Encoding.Unicode, Encoding.UTF8, span[2..].ToArray());
        if (span.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF])) return Encoding.Convert(Encoding.BigEndianUnicode, Encoding.UTF8, span[2..].ToArray());
        return bytes;
    }

    // A line ends with LF, CR or both together, as the CSV reader counts them.
    private static int CountLines(ReadOnlySpan<byte> text)
    {
        int lines = 0;
        for (int i = 0; i < text.Length; i++)
        {
            if (text[i] == '\n' || (text[i] == '\r' && (i + 1 == text.Length || text[i + 1] != '\n'))) lines++;
        }

        return lines;
    }

    private static WeatherFile? Refuse(FaultList faults, Fault fault)
    {
        faults.Add(FaultKind.Files, fault);
        return null;
    }
}
