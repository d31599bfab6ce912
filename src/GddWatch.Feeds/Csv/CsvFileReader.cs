using System.Globalization;
using System.Text;
using CsvHelper;
using GddWatch.Agronomy.Weather;
using GddWatch.Feeds.Faults;
using GddWatch.Feeds.Reading;

namespace GddWatch.Feeds.Csv;

/// <summary>
/// Reads the rows of one CSV file. The package's own strict settings throw and cannot go on after a bad line, so quotes are judged by its hook, which skips the
/// line, and the count of fields here: every bad line is told and every other one kept. Line breaks inside quotes are not allowed, so that one lost quotation mark
/// costs one line.
/// </summary>
internal sealed class CsvFileReader
{
    private readonly CsvFeedDefinition definition;
    private readonly WeatherFile file;
    private readonly DateOnly today;
    private readonly FaultList faults;
    private readonly CsvDate dates;
    private readonly byte[][] missing;
    private readonly byte[]? comment;
    private readonly byte[]? siteValue;
    private readonly SortedSet<string> otherSites = new(StringComparer.Ordinal);

    public CsvFileReader(CsvFeedDefinition definition, WeatherFile file, DateOnly today, FaultList faults)
    {
        this.definition = definition;
        this.file = file;
        this.today = today;
        this.faults = faults;
        dates = new CsvDate(definition.DateFormat, today);
        missing = [.. definition.Missing.Select(text => Encoding.UTF8.GetBytes(text.Trim()))];
        comment = string.IsNullOrEmpty(definition.Comment) ? null : Encoding.UTF8.GetBytes(definition.Comment);
        siteValue = definition.SiteColumn is { } site ? Encoding.UTF8.GetBytes(site.Value.Trim()) : null;
    }

    /// <summary>Faults that only hold if the unit is right: told when it is.</summary>
    public FaultList UnitDependent { get; } = new();

    /// <summary>The rows that have a date, in the order of the file; null where the file as a whole cannot be used.</summary>
    public List<ReadDay>? Read()
    {
        if (!dates.IsWholeDate)
        {
            faults.Add(FaultKind.Files, FileFaults.NotADateFormat(file.Name, definition.DateFormat));
            return null;
        }

        CsvReader reader;
        try
        {
            reader = CsvReader.Create(file.Text, Strict());
        }
        catch (ArgumentException)
        {
            faults.Add(FaultKind.Files, FileFaults.CannotSplit(file.Name, definition.Separator));
            return null;
        }

        using (reader)
        {
            return Read(reader);
        }
    }

    private List<ReadDay>? Read(CsvReader reader)
    {
        CsvColumns? columns = null;
        List<ReadDay> rows = [];
        bool hasRows = false;
        while (reader.Read())
        {
            if (comment is not null && reader.RawRecord.StartsWith(comment)) continue;
            if (columns is null)
            {
                columns = CsvColumns.Find(definition, HeaderOf(reader), file.Name, (int)reader.LineNumber, faults);
                if (columns is null) return null;
                continue;
            }

            hasRows = true;
            if (ReadRow(reader, columns) is { } row) rows.Add(row);
        }

        if (rows.Count > 0) return rows;
        faults.Add(FaultKind.Files, columns is null ? FileFaults.Empty(file.Name) : NoRows(hasRows));
        return null;
    }

    private CsvReaderOptions Strict() => new()
    {
        Separator = definition.Separator,
        HasHeader = false,
        CommentPrefix = definition.Comment is { Length: 1 } prefix && char.IsAscii(prefix[0]) ? prefix[0] : null,
        TrimWhitespace = true,
        TrackLineNumbers = true,
        AllowLineBreaksInQuotes = false,
        MalformedData = CsvMalformedDataHandling.Skip,
        MissingField = CsvMissingFieldHandling.Throw,
        OnMalformedRecord = bad =>
        {
            if (definition.Comment is { Length: > 0 } prefix && bad.RawRecord.StartsWith(prefix, StringComparison.Ordinal)) return;
            faults.Add(FaultKind.Quotes, RowFaults.Quotes(file.Name, (int)bad.LineNumber, bad.RawRecord));
        },
    };

    private static List<string> HeaderOf(CsvReader reader)
    {
        List<string> header = [];
        for (int i = 0; i < reader.FieldCount; i++) header.Add(reader.GetString(i));
        return header;
    }

    private ReadDay? ReadRow(CsvReader reader, CsvColumns columns)
    {
        int line = (int)reader.LineNumber;
        if (reader.RawRecord.Length > RowLimits.LongestLineBytes)
        {
            faults.Add(FaultKind.LongLine, RowFaults.LongLine(file.Name, line, reader.RawRecord.Length, Encoding.UTF8.GetString(reader.RawRecord[..100])));
            return null;
        }

        if (reader.FieldCount != columns.Count)
        {
            faults.Add(FaultKind.FieldCount, RowFaults.FieldCount(file.Name, line, reader.FieldCount, columns.Count, Encoding.UTF8.GetString(reader.RawRecord)));
            return null;
        }

        if (siteValue is not null && !reader.GetSpan(columns.Site).SequenceEqual(siteValue))
        {
            if (otherSites.Count < 6) otherSites.Add(reader.GetString(columns.Site));
            return null;
        }

        if (ReadDate(reader, columns.Date, line) is not { } day) return null;
        ReadDay row = new(day, file.Name, line);
        foreach (CsvColumn column in columns.Variables) ReadCell(reader, column, row);
        CompareExtremes(reader, columns, row);
        return row;
    }

    private DateOnly? ReadDate(CsvReader reader, int place, int line)
    {
        if (!dates.TryRead(reader.GetSpan(place), out DateOnly day))
        {
            string found = reader.GetString(place);
            faults.Add(FaultKind.Date, dates.YearOfImpossible29February(found) is { } year
                ? RowFaults.NoSuch29February(file.Name, line, definition.DateColumn, found, year)
                : RowFaults.NotADate(file.Name, line, definition.DateColumn, found, dates.Accepted));
            return null;
        }

        if (day > today)
        {
            faults.Add(FaultKind.Date, RowFaults.InTheFuture(file.Name, line, definition.DateColumn, reader.GetString(place), today));
            return null;
        }

        if (day < RowLimits.EarliestDay)
        {
            faults.Add(FaultKind.Date, RowFaults.BeforeRecords(file.Name, line, definition.DateColumn, reader.GetString(place)));
            return null;
        }

        return day;
    }

    private void ReadCell(CsvReader reader, CsvColumn column, ReadDay row)
    {
        ReadOnlySpan<byte> text = reader.GetSpan(column.Place);
        foreach (byte[] absent in missing)
        {
            if (text.SequenceEqual(absent)) return;
        }

        if (!double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) || !double.IsFinite(number))
        {
            faults.Add(FaultKind.NotANumber, RowFaults.NotANumber(row.File, row.Line, column.Name, reader.GetString(column.Place), column.IsRequired));
            row.IsUsable &= !column.IsRequired;
            return;
        }

        double value = column.ToRecordUnit(number);
        if (!column.Possible.Contains(value))
        {
            UnitDependent.Add(FaultKind.OutsideRecords, RowFaults.OutsideRecords(
                row.File, row.Line, column.Name, reader.GetString(column.Place), column.Possible, column.Bounds, column.IsRequired));
            row.IsUsable &= !column.IsRequired;
            // Only the extremes still tell the unit; what is optional goes.
            if (!column.IsRequired) return;
        }

        row[column.Variable] = value;
    }

    private void CompareExtremes(CsvReader reader, CsvColumns columns, ReadDay row)
    {
        if (!row.IsUsable || !(row[WeatherVariable.MinimumAirC] > row[WeatherVariable.MaximumAirC])) return;
        CsvColumn minimum = columns.Variables.First(column => column.Variable == WeatherVariable.MinimumAirC);
        CsvColumn maximum = columns.Variables.First(column => column.Variable == WeatherVariable.MaximumAirC);
        row.IsUsable = false;
        faults.Add(FaultKind.MinimumAboveMaximum, RowFaults.MinimumAboveMaximum(
            row.File, row.Line, $"{minimum.Name} and {maximum.Name}", reader.GetString(minimum.Place), reader.GetString(maximum.Place)));
    }

    private Fault NoRows(bool hasRows)
    {
        if (!hasRows) return FileFaults.NoDays(file.Name);
        if (definition.SiteColumn is not { } site || otherSites.Count == 0) return FileFaults.NoGoodDays(file.Name);
        return new Fault
        {
            Severity = FaultSeverity.Refused,
            File = file.Name,
            Column = site.Name,
            Problem = $"No good line is of the site \"{site.Value}\".",
            Accepted = $"a value that the column has, such as {string.Join(", ", otherSites.Take(5).Select(value => $"\"{value}\""))}.",
        };
    }
}
