// A line of the files by year and by station: ID, YEAR/MONTH/DAY, ELEMENT, DATA VALUE, M-FLAG, Q-FLAG, S-FLAG, OBS-TIME, separated by commas. Some files begin
// with a line of such names.
//
// Source: readme-by_year.txt and readme-by_station.txt of GHCN-Daily, NOAA National Centers for Environmental Information. SEEN (by_station), MEMORY (by_year)
using System.Globalization;
using GddWatch.Feeds.Faults;
using GddWatch.Feeds.Reading;

namespace GddWatch.Feeds.Archives.Ghcn;

/// <summary>Reads lines that hold one element of one day.</summary>
internal static class GhcnLongLine
{
    /// <summary>The length of a station's id.</summary>
    public const int IdLength = 11;

    /// <summary>What a line must be, in words.</summary>
    public const string Accepted = "station, date as yyyyMMdd, element, value, three flags and the time of reading, separated by commas.";

    private const int Fields = 8;

    /// <summary>Whether a first line is one of column names.</summary>
    public static bool IsHeader(ReadOnlySpan<byte> line) => line.StartsWith("ID,"u8) || line.StartsWith("\"ID\""u8);

    /// <summary>The station of a line; empty where the line is none.</summary>
    public static ReadOnlySpan<byte> StationOf(ReadOnlySpan<byte> line) => line.Length > IdLength && line[IdLength] == ',' ? line[..IdLength] : [];

    /// <summary>Takes the value of a line.</summary>
    public static void Take(ReadOnlySpan<byte> line, int number, GhcnStationDays days)
    {
        Span<byte> window = stackalloc byte[GhcnPlainLine.Window];
        if (line.Length < window.Length)
        {
            line.CopyTo(window);
            window[line.Length] = (byte)'\n';
            if (GhcnPlainLine.IsAt(window))
            {
                bool isUsed = GhcnPlainLine.TryRead(window, number, out GhcnValue value, out int length);
                if (isUsed) days.Take(value);
                if (length > 0) return;
            }
        }

        TakeSlowly(line, number, days);
    }

    // Field by field, with the place of whatever is wrong.
    private static void TakeSlowly(ReadOnlySpan<byte> line, int number, GhcnStationDays days)
    {
        Span<Range> fields = stackalloc Range[Fields + 1];
        int count = Split(line, fields);
        // Files by station have no comma after the last flag where no time is known.
        if (count is not (Fields or Fields - 1))
        {
            days.Faults.Add(FaultKind.FieldCount, GhcnFaults.NotARecord(days.File, number, Accepted, line));
            return;
        }

        if (GhcnElements.Of(line[fields[2]]) is not { } element) return;
        ReadOnlySpan<byte> date = line[fields[1]];
        if (!TryDate(date, out DateOnly day))
        {
            days.Faults.Add(FaultKind.Date, GhcnFaults.NotADate(days.File, number, "DATE", date, $"a date of the calendar in the form yyyyMMdd, from {RowLimits.EarliestDay.Year} on."));
            return;
        }

        ReadOnlySpan<byte> text = line[fields[3]].Trim((byte)' ');
        if (!int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int value))
        {
            days.Faults.Add(FaultKind.NotANumber, GhcnFaults.NotAWholeNumber(days.File, number, element.Code(), text, element));
            return;
        }

        bool areFlags = GhcnValue.TryFlag(line[fields[4]], out char measurement);
        areFlags &= GhcnValue.TryFlag(line[fields[5]], out char quality);
        areFlags &= GhcnValue.TryFlag(line[fields[6]], out char source);
        if (!areFlags)
        {
            days.Faults.Add(FaultKind.NotANumber, GhcnFaults.NotAFlag(days.File, number, $"flags of {element.Code()}", line[fields[4].Start..fields[6].End]));
            return;
        }

        days.Take(new GhcnValue(day, element, value, measurement, quality, source, count == Fields ? GhcnValue.Time(line[fields[7]].Trim((byte)' ')) : TimeOfReading.NotTold, number));
    }

    /// <summary>Reads eight digits as a day since daily temperatures have been kept.</summary>
    public static bool TryDate(ReadOnlySpan<byte> text, out DateOnly day)
    {
        day = default;
        if (text.Length != 8 || !int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int number)) return false;
        (int year, int month, int date) = (number / 10_000, number / 100 % 100, number % 100);
        if (year < RowLimits.EarliestDay.Year || month is < 1 or > 12 || date < 1 || date > DateTime.DaysInMonth(year, month)) return false;
        day = new DateOnly(year, month, date);
        return true;
    }

    private static int Split(ReadOnlySpan<byte> line, Span<Range> fields)
    {
        int count = 0;
        int start = 0;
        while (count < fields.Length)
        {
            int comma = line[start..].IndexOf((byte)',');
            int end = comma < 0 ? line.Length : start + comma;
            fields[count++] = start..end;
            if (comma < 0) break;
            start = end + 1;
        }

        return count;
    }
}
