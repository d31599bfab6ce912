// A ".dly" file: one line a station, year, month and element, 269 characters.
//
//   ID 1-11   YEAR 12-15   MONTH 16-17   ELEMENT 18-21   then 31 times: VALUE (5)   MFLAG (1)   QFLAG (1)   SFLAG (1)
//
// Source: readme.txt of GHCN-Daily, version 3.26, section III, NOAA National Centers for Environmental Information. SEEN
using System.Globalization;
using GddWatch.Feeds.Faults;
using GddWatch.Feeds.Reading;

namespace GddWatch.Feeds.Archives.Ghcn;

/// <summary>Reads the lines of one ".dly" file.</summary>
internal static class GhcnDlyFile
{
    private const int IdLength = 11;
    private const int YearStart = 11;
    private const int MonthStart = 15;
    private const int ElementStart = 17;
    private const int ValuesStart = 21;
    private const int ValueLength = 5;
    private const int GroupLength = 8;
    private const int RecordLength = ValuesStart + (31 * GroupLength);
    private const string Accepted = "269 characters: station, year, month, element and 31 values of 5 characters with 3 flags each.";

    /// <summary>Takes every value of the chosen station.</summary>
    public static void Read(WeatherFile file, StationChoice choice, GhcnStationDays days)
    {
        byte[] padded = new byte[RecordLength];
        foreach (NumberedLine line in new TextLines(file.Text.Span))
        {
            if (line.Text.Length is >= RecordLength or < RecordLength - 3)
            {
                ReadRecord(line.Text, line.Number, choice, days);
                continue;
            }

            // Editors cut blanks off the ends of lines; a last group without its three flags is still whole.
            padded.AsSpan().Fill((byte)' ');
            line.Text.CopyTo(padded);
            ReadRecord(padded, line.Number, choice, days);
        }
    }

    private static void ReadRecord(ReadOnlySpan<byte> record, int line, StationChoice choice, GhcnStationDays days)
    {
        if (record.Length < RecordLength || !record[RecordLength..].Trim((byte)' ').IsEmpty || record[..IdLength].ContainsAnyExceptInRange((byte)'!', (byte)'~'))
        {
            days.Faults.Add(FaultKind.FieldCount, GhcnFaults.NotARecord(days.File, line, Accepted, record));
            return;
        }

        if (!choice.Takes(record[..IdLength]) || GhcnElements.Of(record.Slice(ElementStart, 4)) is not { } element) return;
        bool isMonth = int.TryParse(record.Slice(YearStart, 4), NumberStyles.None, CultureInfo.InvariantCulture, out int year);
        isMonth &= int.TryParse(record.Slice(MonthStart, 2), NumberStyles.None, CultureInfo.InvariantCulture, out int month);
        if (!isMonth || year < RowLimits.EarliestDay.Year || month is < 1 or > 12)
        {
            days.Faults.Add(FaultKind.Date, GhcnFaults.NotADate(
                days.File, line, "YEAR and MONTH", record.Slice(YearStart, 6), $"a year from {RowLimits.EarliestDay.Year} on and a month from 01 to 12."));
            return;
        }

        for (int day = 1; day <= 31; day++) ReadGroup(record.Slice(ValuesStart + ((day - 1) * GroupLength), GroupLength), element, (year, month, day), line, days);
    }

    private static void ReadGroup(ReadOnlySpan<byte> group, GhcnElement element, (int Year, int Month, int Day) date, int line, GhcnStationDays days)
    {
        ReadOnlySpan<byte> text = group[..ValueLength].Trim((byte)' ');
        if (!int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int value))
        {
            days.Faults.Add(FaultKind.NotANumber, GhcnFaults.NotAWholeNumber(days.File, line, Column(element, date.Day), text, element));
            return;
        }

        if (date.Day > DateTime.DaysInMonth(date.Year, date.Month))
        {
            if (value != GhcnElements.Missing) days.Faults.Add(FaultKind.Date, GhcnFaults.NoSuchDay(days.File, line, Column(element, date.Day), date.Year, date.Month, DayText.Number(value)));
            return;
        }

        days.Take(new GhcnValue(
            new DateOnly(date.Year, date.Month, date.Day), element, value, (char)group[ValueLength], (char)group[ValueLength + 1], (char)group[ValueLength + 2], TimeOfReading.NotTold, line));
    }

    private static string Column(GhcnElement element, int day) => $"VALUE{day} of {element.Code()}";
}
