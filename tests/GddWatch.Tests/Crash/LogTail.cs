using System.Buffers.Binary;

namespace GddWatch.Tests.Crash;

/// <summary>Whether SQLite's log ends in the middle of a transaction (its format: sqlite.org/fileformat2.html, "The Write-Ahead Log", MEMORY).</summary>
internal static class LogTail
{
    private const int HeaderBytes = 32;
    private const int FrameHeaderBytes = 24;

    /// <summary>Whether valid pages follow the last one that ends a transaction.</summary>
    public static bool IsCutOff(byte[] log)
    {
        if (log.Length < HeaderBytes) return false;
        bool bigEndianSums = (log[3] & 1) == 1;
        int page = (int)Read(log, 8);
        (uint A, uint B) sum = Sum(log.AsSpan(0, 24), (0, 0), bigEndianSums);
        bool isCut = false;
        for (int at = HeaderBytes; at + FrameHeaderBytes + page <= log.Length; at += FrameHeaderBytes + page)
        {
            sum = Sum(log.AsSpan(at, 8), sum, bigEndianSums);
            sum = Sum(log.AsSpan(at + FrameHeaderBytes, page), sum, bigEndianSums);
            bool isValid = log.AsSpan(at + 8, 8).SequenceEqual(log.AsSpan(16, 8)) && Read(log, at + 16) == sum.A && Read(log, at + 20) == sum.B;
            if (!isValid) break;
            isCut = Read(log, at + 4) == 0;
        }

        return isCut;
    }

    private static uint Read(byte[] log, int at) => BinaryPrimitives.ReadUInt32BigEndian(log.AsSpan(at, 4));

    private static (uint A, uint B) Sum(ReadOnlySpan<byte> bytes, (uint A, uint B) sum, bool bigEndian)
    {
        for (int i = 0; i < bytes.Length; i += 8)
        {
            sum.A += Word(bytes.Slice(i, 4), bigEndian) + sum.B;
            sum.B += Word(bytes.Slice(i + 4, 4), bigEndian) + sum.A;
        }

        return sum;
    }

    private static uint Word(ReadOnlySpan<byte> bytes, bool bigEndian) => bigEndian ? BinaryPrimitives.ReadUInt32BigEndian(bytes) : BinaryPrimitives.ReadUInt32LittleEndian(bytes);
}
