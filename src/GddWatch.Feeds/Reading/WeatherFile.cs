using System.Text;
using GddWatch.Feeds.Faults;

namespace GddWatch.Feeds.Reading;

/// <summary>
/// A text file, packed or not, as bytes of UTF-8. The whole file is taken at once, so that all lines are of one moment, and so that one endless line cannot stop
/// the reading of the others as it would in a stream.
/// </summary>
internal sealed class WeatherFile
{
    private const int LargestBytes = 1_000_000_000;
    private const int BeginningBytes = 16;
    private const int PieceBytes = 1 << 16;
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
        bool isBeingWritten = false;
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
            isBeingWritten = IsJustNow(changed, clock) || RandomAccess.GetLength(stream.SafeFileHandle) != length;
            return PackedFile.IsPacked(name)
                ? await UnpackAsync(name, bytes.AsMemory(0, read), isBeingWritten, faults, stop)
                : FromBytes(name, bytes.AsMemory(0, read), isBeingWritten, FileFaults.Unfinished, faults);
        }
        catch (Exception failure) when (failure is FileNotFoundException or DirectoryNotFoundException)
        {
            return Refuse(faults, FileFaults.Missing(name, path));
        }
        catch (Exception failure) when (failure is InvalidDataException or NotSupportedException)
        {
            return Refuse(faults, PackedFaults.Broken(name, isBeingWritten));
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            return Refuse(faults, FileFaults.Unreadable(name));
        }
    }

    /// <summary>Whether a file was changed so short a time ago that somebody may still be writing it.</summary>
    public static bool IsJustNow(DateTimeOffset changed, TimeProvider clock) => (clock.GetUtcNow() - changed).Duration() < JustNow;

    private static async Task<WeatherFile?> UnpackAsync(string name, ReadOnlyMemory<byte> packed, bool isBeingWritten, FaultList faults, CancellationToken stop)
    {
        // Nothing can be unpacked from a file of no bytes, and the runtime says so in as many ways as there are formats.
        if (packed.IsEmpty) return Refuse(faults, isBeingWritten ? PackedFaults.Broken(name, changedJustNow: true) : FileFaults.Empty(name));
        using MemoryStream file = new(packed.ToArray(), writable: false);
        await using Stream? text = PackedFile.Open(file, name, faults);
        if (text is null) return null;
        using MemoryStream unpacked = new();
        byte[] piece = new byte[PieceBytes];
        for (int count = await text.ReadAsync(piece, stop); count > 0; count = await text.ReadAsync(piece, stop))
        {
            // What a file says of its unpacked length may be a lie, so what comes out is counted.
            if (unpacked.Length + count > LargestBytes) return Refuse(faults, PackedFaults.UnpacksTooLarge(name, LargestBytes));
            unpacked.Write(piece, 0, count);
        }

        ReadOnlyMemory<byte> bytes = unpacked.GetBuffer().AsMemory(0, (int)unpacked.Length);
        bool isWhole = !PackedFile.IsGzip(name) || PackedFile.EndsWithLength(packed.Span, bytes.Length);
        if (isWhole) return FromBytes(name, bytes, dropsUnfinished: false, FileFaults.Unfinished, faults);
        if (bytes.Span.EndsWith("\n"u8)) faults.Add(FaultKind.WrittenWhileRead, PackedFaults.LengthDiffers(name));
        return FromBytes(name, bytes, dropsUnfinished: true, isBeingWritten ? FileFaults.Unfinished : PackedFaults.CutShort, faults);
    }

    private static WeatherFile? FromBytes(
        string name, ReadOnlyMemory<byte> bytes, bool dropsUnfinished, Func<string, int, string, Fault> unfinished, FaultList faults)
    {
        ReadOnlyMemory<byte> text = AsUtf8(bytes);
        if (text.Span.TrimEnd(" \t\r\n"u8).IsEmpty) return Refuse(faults, FileFaults.Empty(name));
        // Spreadsheets, pictures and archives have a zero byte in their first few bytes, as text in UTF-16 without its mark has. One further on costs its line.
        if (text.Span[..Math.Min(text.Length, BeginningBytes)].Contains((byte)0)) return Refuse(faults, FileFaults.NotText(name));
        int end = text.Span.LastIndexOfAny((byte)'\n', (byte)'\r') + 1;
        if (dropsUnfinished && end < text.Length)
        {
            faults.Add(FaultKind.WrittenWhileRead, unfinished(name, CountLines(text.Span[..end]) + 1, Encoding.UTF8.GetString(text.Span[end..])));
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
