using System.Buffers.Binary;
using System.IO.Compression;
using GddWatch.Feeds.Faults;

namespace GddWatch.Feeds.Reading;

/// <summary>Unpacks .gz and .zip files, as their names say that they are; any other file is what it is.</summary>
internal static class PackedFile
{
    private const int GzipTrailerBytes = 4;

    /// <summary>Whether a name ends as a packed file's does.</summary>
    public static bool IsPacked(string name) => IsGzip(name) || IsZip(name);

    /// <summary>Whether a name ends as a gzip file's does.</summary>
    public static bool IsGzip(string name) => name.EndsWith(".gz", StringComparison.OrdinalIgnoreCase);

    /// <summary>Whether a name ends as a zip file's does.</summary>
    public static bool IsZip(string name) => name.EndsWith(".zip", StringComparison.OrdinalIgnoreCase);

    /// <summary>
    /// The text in a file, unpacked while it is read. Null where a zip does not hold one file alone; the fault names what it holds. A broken file throws
    /// <see cref="InvalidDataException"/>, here or while it is read.
    /// </summary>
    public static Stream? Open(Stream file, string name, FaultList faults)
    {
        if (IsGzip(name)) return new GZipStream(file, CompressionMode.Decompress, leaveOpen: true);
        if (!IsZip(name)) return file;
        ZipArchive zip = new(file, ZipArchiveMode.Read, leaveOpen: true);
        ZipArchiveEntry[] entries = [.. zip.Entries.Where(entry => entry.Name.Length > 0 && !entry.FullName.StartsWith("__MACOSX/", StringComparison.Ordinal))];
        ZipArchiveEntry[] tables = [.. entries.Where(entry => entry.Name.EndsWith(".csv", StringComparison.OrdinalIgnoreCase))];
        if (tables.Length > 0) entries = tables;
        if (entries is [{ } only]) return only.Open();
        faults.Add(FaultKind.Files, PackedFaults.NotOneFile(name, [.. entries.Select(entry => entry.FullName)]));
        return null;
    }

    /// <summary>
    /// Whether a gzip file's last four bytes are the length of what came out of it, modulo 2³² (RFC 1952, section 2.3.1, MEMORY). The runtime ends a file that was cut
    /// short without a word. Also false for whole files that were put together from several.
    /// </summary>
    public static bool EndsWithLength(ReadOnlySpan<byte> end, long unpackedBytes) =>
        end.Length >= GzipTrailerBytes && BinaryPrimitives.ReadUInt32LittleEndian(end[^GzipTrailerBytes..]) == (uint)unpackedBytes;
}
