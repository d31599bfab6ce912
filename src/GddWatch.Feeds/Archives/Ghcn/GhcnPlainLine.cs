using System.Buffers.Binary;
using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using GddWatch.Feeds.Reading;

namespace GddWatch.Feeds.Archives.Ghcn;

/// <summary>
/// Reads lines that are written as the archive writes them, from the text ahead without looking for the line's end first: the benchmark of files by year shows that
/// this is several times as fast as fields cut first and parsed then. Of a line of any other form nothing is said: <see cref="GhcnLongLine"/> does that, and gives
/// the same for the lines read here.
/// </summary>
internal static class GhcnPlainLine
{
    /// <summary>How many bytes of text are looked at from a line's beginning, whether they are still of the line or not.</summary>
    public const int Window = ValueStart + 32;

    private const int DateStart = GhcnLongLine.IdLength + 1;
    private const int DateLength = 8;
    private const int ElementStart = DateStart + DateLength + 1;
    private const int ElementLength = 4;
    private const int ValueStart = ElementStart + ElementLength + 1;
    private const int MostDigits = 5;
    private const int TimeLength = 4;

    // Where commas stand before the value, and how far to look for them.
    private const uint Commas = (1u << (DateStart - 1)) | (1u << (ElementStart - 1)) | (1u << (ValueStart - 1));
    private const uint BeforeValue = (1u << ValueStart) - 1;
    private const uint BeforeDate = (1u << (DateStart - 1)) - 1;

    // The number of each month's first day, and of the first one after them all: tens of millions of dates are read. A later year than the last is no usual form, and read the other way.
    private const int MonthsInYear = 12;
    private const int LastYear = 2199;
    private static readonly int FirstYear = RowLimits.EarliestDay.Year;
    private static readonly int[] FirstDays = [.. Enumerable.Range(0, ((LastYear - FirstYear + 1) * MonthsInYear) + 1).Select(month => new DateOnly(FirstYear, 1, 1).AddMonths(month).DayNumber)];

    private const ulong Zeros = 0x3030303030303030;

    /// <summary>Whether the text begins with a line whose station, date and element have their usual lengths.</summary>
    public static bool IsAt(ReadOnlySpan<byte> ahead)
    {
        Vector256<byte> text = Vector256.Create(ahead);
        uint commas = Vector256.Equals(text, Vector256.Create((byte)',')).ExtractMostSignificantBits();
        uint ends = Vector256.Equals(text, Vector256.Create((byte)'\n')).ExtractMostSignificantBits();
        // The id may hold anything.
        return (commas & BeforeValue & ~BeforeDate) == Commas && (ends & BeforeValue) == 0;
    }

    /// <summary>The length of the line that <see cref="IsAt"/> saw, with its end; 0 where it goes on beyond the window.</summary>
    public static int LengthOf(ReadOnlySpan<byte> ahead)
    {
        uint ends = Vector256.Equals(Vector256.Create(ahead[ValueStart..]), Vector256.Create((byte)'\n')).ExtractMostSignificantBits();
        return ends == 0 ? 0 : ValueStart + BitOperations.TrailingZeroCount(ends) + 1;
    }

    /// <summary>Reads the line that <see cref="IsAt"/> saw; true where it holds a value that is used.</summary>
    /// <param name="ahead">The text ahead, of at least <see cref="Window"/> bytes.</param>
    /// <param name="number">The line's number, from 1.</param>
    /// <param name="value">The value, where there is one.</param>
    /// <param name="length">The line's length with its end; 0 where it is not of the usual form.</param>
    public static bool TryRead(ReadOnlySpan<byte> ahead, int number, out GhcnValue value, out int length)
    {
        value = default;
        length = 0;
        ReadOnlySpan<byte> text = ahead.Slice(ValueStart, Vector256<byte>.Count);
        var fields = Vector256.Create(text);
        uint ends = Vector256.Equals(fields, Vector256.Create((byte)'\n')).ExtractMostSignificantBits();
        uint commas = Vector256.Equals(fields, Vector256.Create((byte)',')).ExtractMostSignificantBits();
        if (ends == 0) return false;
        int newLine = BitOperations.TrailingZeroCount(ends);
        int end = newLine > 0 && text[newLine - 1] == '\r' ? newLine - 1 : newLine;
        int afterValue = BitOperations.TrailingZeroCount(commas);
        commas &= commas - 1;
        int afterMeasurement = BitOperations.TrailingZeroCount(commas);
        commas &= commas - 1;
        int afterQuality = BitOperations.TrailingZeroCount(commas);
        if (afterQuality >= end || afterMeasurement - afterValue > 2 || afterQuality - afterMeasurement > 2) return false;
        if (!TryValue(text, afterValue, out int tenths) || !TryDate(ahead.Slice(DateStart, DateLength), out DateOnly day)) return false;
        if (!TryLastFields(text[(afterQuality + 1)..end], out char source, out TimeOfReading time)) return false;
        length = ValueStart + newLine + 1;
        if (!GhcnElements.TryOf(BinaryPrimitives.ReadUInt32LittleEndian(ahead[ElementStart..]), out GhcnElement element)) return false;
        value = new GhcnValue(day, element, tenths, FlagBefore(text, afterValue, afterMeasurement), FlagBefore(text, afterMeasurement, afterQuality), source, time, number);
        return true;
    }

    // Digits after a minus or none, up to the comma: moved to the end of eight bytes, with zeros before them.
    private static bool TryValue(ReadOnlySpan<byte> text, int length, out int value)
    {
        int sign = text[0] == '-' ? 1 : 0;
        int digits = length - sign;
        value = 0;
        if (digits is < 1 or > MostDigits) return false;
        int unused = (sizeof(ulong) - digits) * 8;
        ulong eight = (BinaryPrimitives.ReadUInt64LittleEndian(text[sign..]) << unused) | (Zeros >> (64 - unused));
        if (!AreDigits(eight)) return false;
        ulong pairs = PairsOf(eight);
        // The first pair of eight digits is always 0, since there are five at most.
        int number = ((int)((pairs >> 16) & 0xFF) * 10_000) + ((int)((pairs >> 32) & 0xFF) * 100) + (int)((pairs >> 48) & 0xFF);
        value = (number ^ -sign) + sign;
        return true;
    }

    // Between two commas: nothing or one character.
    private static char FlagBefore(ReadOnlySpan<byte> text, int before, int after) => after - before == 2 ? (char)text[before + 1] : ' ';

    // The source, and the time of reading: four digits, nothing, or not even a comma before it.
    private static bool TryLastFields(ReadOnlySpan<byte> rest, out char source, out TimeOfReading time)
    {
        source = ' ';
        time = TimeOfReading.NotTold;
        if (rest.IsEmpty) return true;
        if (rest[0] != ',')
        {
            source = (char)rest[0];
            rest = rest[1..];
        }

        if (rest.Length is 0 or 1) return rest.IsEmpty || rest[0] == ',';
        if (rest.Length != TimeLength + 1 || rest[0] != ',') return false;
        int number = 0;
        foreach (byte each in rest[1..])
        {
            uint digit = (uint)(each - '0');
            if (digit > 9) return false;
            number = (number * 10) + (int)digit;
        }

        time = GhcnValue.Time(number);
        return true;
    }

    private static bool TryDate(ReadOnlySpan<byte> text, out DateOnly day)
    {
        day = default;
        ulong digits = BinaryPrimitives.ReadUInt64LittleEndian(text);
        if (!AreDigits(digits)) return false;
        ulong pairs = PairsOf(digits);
        int year = ((int)(pairs & 0xFF) * 100) + (int)((pairs >> 16) & 0xFF);
        int month = (int)((pairs >> 32) & 0xFF);
        int date = (int)((pairs >> 48) & 0xFF);
        int place = ((year - FirstYear) * MonthsInYear) + month - 1;
        if (year < FirstYear || year > LastYear || month is < 1 or > MonthsInYear || date < 1 || date > FirstDays[place + 1] - FirstDays[place]) return false;
        day = DateOnly.FromDayNumber(FirstDays[place] + date - 1);
        return true;
    }

    // Both halves of each byte are tested.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static bool AreDigits(ulong eight) => (eight & 0xF0F0F0F0F0F0F0F0) == Zeros && ((eight + 0x0606060606060606) & 0xF0F0F0F0F0F0F0F0) == Zeros;

    // Eight digits at once: one multiplication joins neighbours to four numbers of two digits, in every other byte.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static ulong PairsOf(ulong eight)
    {
        ulong digits = eight - Zeros;
        return (digits * 10) + (digits >> 8);
    }
}
