using System.Buffers.Binary;
using GddWatch.Feeds.Reading;

namespace GddWatch.Feeds.Archives.Ghcn;

/// <summary>
/// Takes lines that are written as the archive writes them, straight through: the benchmark of files by year shows that this is several times as fast as fields cut first
/// and parsed then. A line of any other form is not taken, and nothing is said of it: <see cref="GhcnLongLine"/> does both, and gives the same for the lines taken here.
/// </summary>
internal static class GhcnPlainLine
{
    private const int DateStart = GhcnLongLine.IdLength + 1;
    private const int DateLength = 8;
    private const int ElementStart = DateStart + DateLength + 1;
    private const int ElementLength = 4;
    private const int ValueStart = ElementStart + ElementLength + 1;
    private const int MostDigits = 5;
    private const int TimeLength = 4;

    /// <summary>Whether the line was of the usual form; then its value is taken, if it is of an element that is used.</summary>
    public static bool TryTake(ReadOnlySpan<byte> line, int number, GhcnStationDays days)
    {
        if (line.Length <= ValueStart || line[ElementStart - 1] != ',' || line[ValueStart - 1] != ',') return false;
        int at = ValueStart;
        if (!TryValue(line, ref at, out int value) || !TryFlag(line, ref at, out char measurement) || !TryFlag(line, ref at, out char quality)) return false;
        if (!TryDate(line.Slice(DateStart, DateLength), out DateOnly day)) return false;
        if (!TryLastFields(line[at..], out char source, out int? time)) return false;
        if (GhcnElements.Of(line.Slice(ElementStart, ElementLength)) is not { } element) return !line.Slice(ElementStart, ElementLength).Contains((byte)',');
        days.Take(new GhcnValue(day, element, value, measurement, quality, source, time, number));
        return true;
    }

    // Digits after a minus or none, and a comma.
    private static bool TryValue(ReadOnlySpan<byte> line, ref int at, out int value)
    {
        value = 0;
        bool isNegative = line[at] == '-';
        if (isNegative) at++;
        int start = at;
        for (; at < line.Length; at++)
        {
            uint digit = (uint)(line[at] - '0');
            if (digit > 9) break;
            value = (value * 10) + (int)digit;
            if (at - start >= MostDigits) return false;
        }

        if (at == start || at == line.Length || line[at] != ',') return false;
        at++;
        if (isNegative) value = -value;
        return true;
    }

    // A comma, or a character and a comma.
    private static bool TryFlag(ReadOnlySpan<byte> line, ref int at, out char flag)
    {
        flag = ' ';
        if (at >= line.Length) return false;
        if (line[at++] == ',') return true;
        flag = (char)line[at - 1];
        return at < line.Length && line[at++] == ',';
    }

    // The source, and the time of reading: four digits, nothing, or not even a comma before it.
    private static bool TryLastFields(ReadOnlySpan<byte> rest, out char source, out int? time)
    {
        source = ' ';
        time = null;
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

    // Eight digits at once: one multiplication joins neighbours to four numbers of two digits. Both halves of each byte are tested first.
    private static bool TryDate(ReadOnlySpan<byte> text, out DateOnly day)
    {
        day = default;
        ulong digits = BinaryPrimitives.ReadUInt64LittleEndian(text);
        if ((digits & 0xF0F0F0F0F0F0F0F0) != 0x3030303030303030 || ((digits + 0x0606060606060606) & 0xF0F0F0F0F0F0F0F0) != 0x3030303030303030) return false;
        digits -= 0x3030303030303030;
        ulong pairs = (digits * 10) + (digits >> 8);
        int year = ((int)(pairs & 0xFF) * 100) + (int)((pairs >> 16) & 0xFF);
        int month = (int)((pairs >> 32) & 0xFF);
        int date = (int)((pairs >> 48) & 0xFF);
        if (year < RowLimits.EarliestDay.Year || month is < 1 or > 12 || date < 1 || date > DateTime.DaysInMonth(year, month)) return false;
        day = new DateOnly(year, month, date);
        return true;
    }
}
