// A station's CSV file as the archive keeps it, in one of two layouts. The one of the folder "access" has a line a day: STATION, DATE, LATITUDE, LONGITUDE,
// ELEVATION, NAME, and for each element a column of its name (tenths, as in ".dly") and one of its name and _ATTRIBUTES: measurement flag, quality flag, source flag
// and, where known, the time of reading, separated by commas. The one of the folder "by_station" is that of the files by year.
//
// Source: documentation of GHCN-Daily's access files, NOAA National Centers for Environmental Information (MEMORY); that the attributes are these four was SEEN in
// replies of the same centre's service.
using System.Globalization;
using System.Text;
using CsvHelper;
using GddWatch.Feeds.Faults;
using GddWatch.Feeds.Reading;

namespace GddWatch.Feeds.Archives.Ghcn;

/// <summary>Reads one station's CSV file of either layout.</summary>
internal sealed class GhcnStationCsvFile(WeatherFile file, StationChoice choice, PositionTrack positions, GhcnStationDays days)
{
    private const double LowestLandM = -500;

    private static readonly string[] Required = ["DATE", "TMAX", "TMAX_ATTRIBUTES", "TMIN", "TMIN_ATTRIBUTES"];
    private static readonly string[] PositionNames = ["LATITUDE", "LONGITUDE", "ELEVATION"];
    private static readonly string[] AttributeNames = [.. Enum.GetValues<GhcnElement>().Select(element => $"{element.Code()}_ATTRIBUTES")];

    private readonly Dictionary<string, int> places = new(StringComparer.Ordinal);
    private readonly byte[]?[] position = new byte[3][];
    private int fieldCount;
    private int? decimalsOnLine;

    /// <summary>Takes every value of the chosen station; false where the file as a whole cannot be used.</summary>
    public bool Read()
    {
        ReadOnlySpan<byte> text = file.Text.Span;
        if (text.StartsWith("STATION"u8) || text.StartsWith("\"STATION\""u8)) return ReadWide();
        foreach (NumberedLine line in new TextLines(text))
        {
            if (line.Number == 1 && GhcnLongLine.IsHeader(line.Text)) continue;
            ReadOnlySpan<byte> station = GhcnLongLine.StationOf(line.Text);
            if (station.IsEmpty) days.Faults.Add(FaultKind.FieldCount, GhcnFaults.NotARecord(file.Name, line.Number, GhcnLongLine.Accepted, line.Text));
            else if (choice.Takes(station)) GhcnLongLine.Take(line.Text, line.Number, days);
        }

        return true;
    }

    private bool ReadWide()
    {
        using var reader = CsvReader.Create(file.Text, new CsvReaderOptions
        {
            HasHeader = false,
            TrimWhitespace = true,
            TrackLineNumbers = true,
            AllowLineBreaksInQuotes = false,
            MalformedData = CsvMalformedDataHandling.Skip,
            MissingField = CsvMissingFieldHandling.Throw,
            OnMalformedRecord = bad => days.Faults.Add(FaultKind.Quotes, RowFaults.Quotes(file.Name, (int)bad.LineNumber, bad.RawRecord)),
        });
        while (reader.Read())
        {
            if (fieldCount == 0)
            {
                if (!ReadHeader(reader)) return false;
            }
            else
            {
                ReadDay(reader);
            }
        }

        if (decimalsOnLine is not { } line) return true;
        days.Faults.Add(FaultKind.Header, GhcnFaults.NotStationColumns(file.Name, line, "temperatures", hasDegrees: true));
        return false;
    }

    private bool ReadHeader(CsvReader reader)
    {
        fieldCount = reader.FieldCount;
        for (int i = 0; i < fieldCount; i++) places.TryAdd(reader.GetString(i), i);
        string[] missing = [.. Required.Where(name => !places.ContainsKey(name))];
        if (missing.Length == 0) return true;
        days.Faults.Add(FaultKind.Header, GhcnFaults.NotStationColumns(file.Name, (int)reader.LineNumber, string.Join(", ", missing), hasDegrees: false));
        return false;
    }

    private void ReadDay(CsvReader reader)
    {
        int line = (int)reader.LineNumber;
        if (reader.FieldCount != fieldCount)
        {
            days.Faults.Add(FaultKind.FieldCount, RowFaults.FieldCount(file.Name, line, reader.FieldCount, fieldCount, Encoding.UTF8.GetString(reader.RawRecord[..Math.Min(reader.RawRecord.Length, 100)])));
            return;
        }

        if (!choice.Takes(Field(reader, "STATION"))) return;
        ReadOnlySpan<byte> date = Field(reader, "DATE");
        if (!DateOnly.TryParseExact(Encoding.UTF8.GetString(date), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day) || day < RowLimits.EarliestDay)
        {
            days.Faults.Add(FaultKind.Date, GhcnFaults.NotADate(file.Name, line, "DATE", date, $"a date of the calendar in the form yyyy-MM-dd, from {RowLimits.EarliestDay.Year} on."));
            return;
        }

        MeetPosition(reader, line);
        for (int i = 0; i < GhcnElements.Count; i++) ReadElement(reader, (GhcnElement)i, day, line);
    }

    private void ReadElement(CsvReader reader, GhcnElement element, DateOnly day, int line)
    {
        ReadOnlySpan<byte> text = Field(reader, element.Code());
        if (text.IsEmpty) return;
        if (!int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int value))
        {
            days.Faults.Add(FaultKind.NotANumber, GhcnFaults.NotAWholeNumber(file.Name, line, element.Code(), text, element));
            // One number with decimals shows that the whole ones are degrees too, and they must not pass for tenths.
            if (element.IsExtreme() && text.Contains((byte)'.') && double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out _)) decimalsOnLine ??= line;
            return;
        }

        ReadOnlySpan<byte> attributes = Field(reader, AttributeNames[(int)element]);
        Span<Range> parts = stackalloc Range[5];
        int count = 0;
        foreach (Range part in attributes.Split((byte)','))
        {
            if (count == parts.Length) break;
            parts[count++] = part;
        }

        bool areFlags = GhcnValue.TryFlag(Part(attributes, parts, count, 0), out char measurement);
        areFlags &= GhcnValue.TryFlag(Part(attributes, parts, count, 1), out char quality);
        areFlags &= GhcnValue.TryFlag(Part(attributes, parts, count, 2), out char source);
        if (!areFlags || count > 4)
        {
            days.Faults.Add(FaultKind.NotANumber, GhcnFaults.NotAFlag(file.Name, line, AttributeNames[(int)element], attributes));
            return;
        }

        days.Take(new GhcnValue(day, element, value, measurement, quality, source, GhcnValue.Time(Part(attributes, parts, count, 3)), line));
    }

    private void MeetPosition(CsvReader reader, int line)
    {
        bool isNew = false;
        for (int i = 0; i < PositionNames.Length; i++)
        {
            ReadOnlySpan<byte> written = Field(reader, PositionNames[i]);
            if (position[i] is { } before && written.SequenceEqual(before)) continue;
            position[i] = written.ToArray();
            isNew = true;
        }

        if (!isNew) return;
        double metres = Number(position[2]!);
        positions.Meet(new StationPosition(Number(position[0]!), Number(position[1]!), metres > LowestLandM ? metres : null), file.Name, line, days.Faults);
    }

    private static double Number(ReadOnlySpan<byte> text) => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) ? value : double.NaN;

    private static ReadOnlySpan<byte> Part(ReadOnlySpan<byte> text, ReadOnlySpan<Range> parts, int count, int index) => index < count ? text[parts[index]].Trim((byte)' ') : [];

    private ReadOnlySpan<byte> Field(CsvReader reader, string name) => places.TryGetValue(name, out int place) ? reader.GetSpan(place).Trim((byte)' ') : [];
}
