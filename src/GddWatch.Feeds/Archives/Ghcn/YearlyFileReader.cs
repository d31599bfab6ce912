using System.Text;
using GddWatch.Feeds.Faults;
using GddWatch.Feeds.Reading;

namespace GddWatch.Feeds.Archives.Ghcn;

/// <summary>
/// Reads a file by year once from beginning to end and keeps what is of the wanted stations. Such a file has more than a gigabyte, so it is not held in memory.
/// </summary>
internal sealed class YearlyFileReader
{
    /// <summary>In what steps the reading is told [bytes].</summary>
    public const int Megabyte = 1_000_000;

    // The largest years have about 1.3 GB (common practice); what is larger is no year, or a packed file made to fill the machine.
    private const long LargestBytes = 8_000_000_000;
    private const int PieceBytes = 1 << 20;
    private const int GzipTrailerBytes = 4;
    private const int BeginningBytes = 16;
    private const int OthersShown = 5;

    private readonly string name;
    private readonly TimeProvider clock;
    private readonly StationPlaces places;
    private readonly GhcnStationDays[] wanted;
    private readonly GatheredValues gathered;
    private readonly Dictionary<string, GhcnStationDays> stations = new(StringComparer.Ordinal);
    private readonly SortedSet<string> others = new(StringComparer.Ordinal);
    private readonly FaultList faults = new();
    private int lines;
    private bool isInLongLine;
    private long megabytesTold;

    public YearlyFileReader(string name, IEnumerable<string> wantedStations, TimeProvider clock)
    {
        this.name = name;
        this.clock = clock;
        List<StationKey> keys = [];
        foreach (string station in wantedStations)
        {
            if (StationKey.Of(station) is not { } key || !stations.TryAdd(station, new GhcnStationDays(name))) continue;
            keys.Add(key);
        }

        places = new StationPlaces(keys);
        wanted = [.. stations.Values];
        gathered = new GatheredValues(wanted);
    }

    /// <summary>Reads the file.</summary>
    /// <param name="path">Where it is.</param>
    /// <param name="megabyteRead">Called after each megabyte of it, packed as it may be; null for nobody.</param>
    /// <param name="stop">Stops the reading.</param>
    public async Task<YearlyFile> ReadAsync(string path, Action? megabyteRead, CancellationToken stop)
    {
        bool isBeingWritten = false;
        try
        {
            if (Directory.Exists(path)) return Refuse(FileFaults.IsAFolder(name));
            DateTimeOffset changed = new(File.GetLastWriteTimeUtc(path));
            await using FileStream file = new(
                path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, bufferSize: 1 << 16, FileOptions.Asynchronous | FileOptions.SequentialScan);
            isBeingWritten = WeatherFile.IsJustNow(changed, clock);
            byte[] end = EndOf(file);
            await using Stream? text = PackedFile.Open(file, name, faults);
            return text is null ? Refuse(null) : await ReadAsync(text, end, isBeingWritten, () => Tell(file.Position, megabyteRead), stop);
        }
        catch (Exception failure) when (failure is FileNotFoundException or DirectoryNotFoundException)
        {
            return Refuse(FileFaults.Missing(name, path));
        }
        catch (Exception failure) when (failure is InvalidDataException or NotSupportedException)
        {
            return Refuse(PackedFaults.Broken(name, isBeingWritten));
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            return Refuse(FileFaults.Unreadable(name));
        }
    }

    private async Task<YearlyFile> ReadAsync(Stream text, byte[] endOfFile, bool isBeingWritten, Action pieceRead, CancellationToken stop)
    {
        // Each has room for a piece, and before it for the beginning of a line that the piece before ended in. While lines are taken out of one, the other is read into.
        byte[] buffer = new byte[2 * PieceBytes], next = new byte[2 * PieceBytes];
        int kept = 0;
        long total = 0;
        Task<int> reading = ReadPieceAsync(text, buffer, stop);
        while (true)
        {
            int count = await reading;
            if (count == 0) break;
            pieceRead();
            bool isBeginning = total == 0;
            total += count;
            if (total > LargestBytes) return Refuse(PackedFaults.UnpacksTooLarge(name, LargestBytes));
            // A first piece of fewer bytes than the beginning is judged by what there is: no text has a zero byte.
            if (isBeginning && buffer.AsSpan(PieceBytes, Math.Min(count, BeginningBytes)).Contains((byte)0)) return Refuse(FileFaults.NotText(name));
            reading = ReadPieceAsync(text, next, stop);
            kept = Take(buffer.AsSpan(PieceBytes - kept, kept + count), next.AsSpan(0, PieceBytes));
            (buffer, next) = (next, buffer);
            await gathered.PutAsync();
        }

        if (total == 0) return Refuse(isBeingWritten ? PackedFaults.Broken(name, changedJustNow: true) : FileFaults.Empty(name));
        FinishLastLines(buffer.AsSpan(PieceBytes - kept, kept), PackedFile.IsGzip(name) && !PackedFile.EndsWithLength(endOfFile, total), isBeingWritten);
        gathered.HandOverAll();
        return new YearlyFile(stations, faults, others);
    }

    private void Tell(long bytes, Action? megabyteRead)
    {
        for (; megabytesTold < bytes / Megabyte; megabytesTold++) megabyteRead?.Invoke();
    }

    // On its own, so that a piece is read, and unpacked, while lines are taken out of the one before.
    private static Task<int> ReadPieceAsync(Stream text, byte[] buffer, CancellationToken stop) =>
        Task.Run(() => text.ReadAsync(buffer.AsMemory(PieceBytes), stop).AsTask(), stop);

    // Takes the whole lines, puts the rest of the text to the end of the room before the next piece, and gives its length. A rest that fills the room is of a line that nobody wants.
    private int Take(ReadOnlySpan<byte> text, Span<byte> roomBeforeNext)
    {
        // The last lines wait for the next piece: they too can then be of the usual form.
        ReadOnlySpan<byte> rest = TakeLines(text, GhcnPlainLine.Window);
        if (rest.Length < roomBeforeNext.Length)
        {
            rest.CopyTo(roomBeforeNext[^rest.Length..]);
            return rest.Length;
        }

        if (!isInLongLine) TellLongLine(rest[..roomBeforeNext.Length], lines + 1);
        isInLongLine = true;
        return 0;
    }

    private void FinishLastLines(ReadOnlySpan<byte> text, bool isCutShort, bool isBeingWritten)
    {
        ReadOnlySpan<byte> rest = TakeLines(text, fewestBytes: 0);
        if (isCutShort && rest.IsEmpty) faults.Add(FaultKind.WrittenWhileRead, PackedFaults.LengthDiffers(name));
        if (rest.IsEmpty || isInLongLine) return;
        if (isBeingWritten) faults.Add(FaultKind.WrittenWhileRead, FileFaults.Unfinished(name, lines + 1, Encoding.UTF8.GetString(rest)));
        else if (isCutShort) faults.Add(FaultKind.WrittenWhileRead, PackedFaults.CutShort(name, lines + 1, Encoding.UTF8.GetString(rest)));
        else TakeLine(rest);
    }

    // Takes the whole lines while there are so many bytes ahead, and gives the rest of the text.
    private ReadOnlySpan<byte> TakeLines(ReadOnlySpan<byte> text, int fewestBytes)
    {
        ReadOnlySpan<byte> rest = text;
        while (rest.Length >= fewestBytes)
        {
            if (!isInLongLine && rest.Length >= GhcnPlainLine.Window)
            {
                int length = TakePlainLine(rest);
                rest = rest[length..];
                if (length > 0) continue;
            }

            int end = rest.IndexOf((byte)'\n');
            if (end < 0) break;
            if (isInLongLine) lines++;
            else TakeLine(rest[..end]);
            isInLongLine = false;
            rest = rest[(end + 1)..];
        }

        return rest;
    }

    // The length of the line that was taken, with its end; 0 where it is not of the usual form, so that it was not.
    private int TakePlainLine(ReadOnlySpan<byte> ahead)
    {
        if (!GhcnPlainLine.IsAt(ahead)) return 0;
        int length;
        int place = places.Of(StationKey.Of(ahead));
        if (place >= 0)
        {
            if (GhcnPlainLine.TryRead(ahead, lines + 1, out GhcnValue value, out length)) gathered.Add(place, value);
        }
        else
        {
            length = others.Count < OthersShown ? 0 : GhcnPlainLine.LengthOf(ahead);
        }

        if (length > 0) lines++;
        return length;
    }

    private void TakeLine(ReadOnlySpan<byte> line)
    {
        lines++;
        if (lines == 1 && line.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF])) line = line[3..];
        if (line.EndsWith("\r"u8)) line = line[..^1];
        if (line.IsEmpty || (lines == 1 && GhcnLongLine.IsHeader(line))) return;
        ReadOnlySpan<byte> station = GhcnLongLine.StationOf(line);
        if (station.IsEmpty)
        {
            if (line.Length > RowLimits.LongestLineBytes) TellLongLine(line, lines);
            else faults.Add(FaultKind.FieldCount, GhcnFaults.NotARecord(name, lines, GhcnLongLine.Accepted, line));
        }
        else if (places.Of(StationKey.Of(station)) is var place and >= 0)
        {
            gathered.HandOver(place);
            GhcnLongLine.Take(line, lines, wanted[place]);
        }
        else if (others.Count < OthersShown)
        {
            others.Add(Encoding.UTF8.GetString(station));
        }
    }

    private void TellLongLine(ReadOnlySpan<byte> line, int number) =>
        faults.Add(FaultKind.LongLine, RowFaults.LongLine(name, number, line.Length, Encoding.UTF8.GetString(line[..100])));

    private static byte[] EndOf(FileStream file)
    {
        byte[] end = new byte[Math.Min(GzipTrailerBytes, file.Length)];
        int count = RandomAccess.Read(file.SafeFileHandle, end, file.Length - end.Length);
        return end[..count];
    }

    private YearlyFile Refuse(Fault? fault)
    {
        if (fault is not null) faults.Add(FaultKind.Files, fault);
        return new YearlyFile(new Dictionary<string, GhcnStationDays>(), faults, others);
    }
}
