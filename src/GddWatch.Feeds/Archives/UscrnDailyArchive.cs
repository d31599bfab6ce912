// The daily product of the US Climate Reference Network, CRND0103: one file a station and year, one line a day, fixed columns in plain text.
//
//   field                          columns   unit     missing   used as
//    1 WBANNO                        1-5              -99999
//    2 LST_DATE                      7-14    yyyymmdd           the day, in local standard time
//    3 CRX_VN                       16-21             -9.000
//    4 LONGITUDE                    23-29    °        -9999     the place, compared with the site's
//    5 LATITUDE                     31-37    °        -9999     the place, compared with the site's
//    6 T_DAILY_MAX                  39-45    °C       -9999     maximum
//    7 T_DAILY_MIN                  47-53    °C       -9999     minimum
//    8 T_DAILY_MEAN                 55-61    °C       -9999              ((max + min) / 2)
//    9 T_DAILY_AVG                  63-69    °C       -9999     mean
//   10 P_DAILY_CALC                 71-77    mm       -9999     precipitation
//   11 SOLARAD_DAILY                79-86    MJ/m²    -9999     solar radiation
//   12 SUR_TEMP_DAILY_TYPE          88-88    R, C, U
//   13-15 SUR_TEMP_DAILY_MAX, MIN, AVG       90-96, 98-104, 106-112     °C   -9999
//   16-17 RH_DAILY_MAX, MIN         114-120, 122-128   %        -9999
//   18 RH_DAILY_AVG                130-136   %        -9999     humidity
//   19-23 SOIL_MOISTURE_5, 10, 20, 50, 100_DAILY       138-144 … 170-176     m³/m³   -99
//   24 SOIL_TEMP_5_DAILY           178-184   °C       -9999     soil at 5 cm
//   25 SOIL_TEMP_10_DAILY          186-192   °C       -9999     soil at 10 cm
//   26-28 SOIL_TEMP_20, 50, 100_DAILY                  194-200, 202-208, 210-216   °C   -9999
//
// Source: readme.txt of the product CRND0103, NOAA National Centers for Environmental Information (columns MEMORY; the files agree with them).
using System.Globalization;
using System.Text;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Weather;
using GddWatch.Feeds.Faults;
using GddWatch.Feeds.Reading;

namespace GddWatch.Feeds.Archives;

/// <summary>Files of the daily product of the US Climate Reference Network.</summary>
/// <param name="definition">Which files.</param>
/// <param name="baseFolder">The folder at which a relative pattern starts.</param>
/// <param name="clock">Tells whether a file was changed just now.</param>
public sealed class UscrnDailyArchive(ArchiveFeedDefinition definition, string baseFolder, TimeProvider clock) : IWeatherFeed
{
    private const int RecordLength = 216;
    private const int DateStart = 6;
    private const int DateLength = 8;
    private const int PositionStart = 22;
    private const int PositionLength = 15;
    private const int LatitudeStart = 30;
    private const int CoordinateLength = 7;
    private const double Missing = -9999;
    private const double MissingMoisture = -99;

    private static readonly FixedField[] Fields =
    [
        new(WeatherVariable.MaximumAirC, "T_DAILY_MAX", 38, 7),
        new(WeatherVariable.MinimumAirC, "T_DAILY_MIN", 46, 7),
        new(WeatherVariable.MeanAirC, "T_DAILY_AVG", 62, 7),
        new(WeatherVariable.PrecipitationMm, "P_DAILY_CALC", 70, 7),
        new(WeatherVariable.SolarRadiationMJ, "SOLARAD_DAILY", 78, 8),
        new(WeatherVariable.RelativeHumidityPercent, "RH_DAILY_AVG", 129, 7),
        new(WeatherVariable.Soil5CmC, "SOIL_TEMP_5_DAILY", 177, 7),
        new(WeatherVariable.Soil10CmC, "SOIL_TEMP_10_DAILY", 185, 7),
    ];

    // The blanks between the fields, from 0: what shows that a line is in these columns.
    private static readonly int[] Blanks =
        [5, 14, 21, 29, 37, 45, 53, 61, 69, 77, 86, 88, 96, 104, 112, 120, 128, 136, 144, 152, 160, 168, 176, 184, 192, 200, 208];

    /// <inheritdoc/>
    public string Name => definition.Files;

    /// <inheritdoc/>
    public async Task<FeedReading> ReadAsync(Site site, DateOnly today, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(site);
        FaultList faults = new();
        ReadDays days = new(faults);
        PositionTrack positions = new();
        IReadOnlyList<string> names = FilePattern.Find(definition.Files, baseFolder);
        if (names.Count == 0) faults.Add(FaultKind.Files, FileFaults.NoMatch(Name));
        foreach (string name in names)
        {
            stop.ThrowIfCancellationRequested();
            string path = Path.GetFullPath(name, Path.GetFullPath(baseFolder));
            if (await WeatherFile.ReadAsync(path, name, clock, faults, stop) is not { } file) continue;
            List<ReadDay> rows = Read(file, today, positions, faults);
            if (!rows.Exists(row => row.IsUsable)) faults.Add(FaultKind.Files, FileFaults.NoGoodDays(name));
            days.AddFile(rows);
        }

        positions.Compare(site, faults);
        return days.IsEmpty
            ? new FeedReading(null, faults.Told(refusalsAreLeftOut: false))
            : new FeedReading(days.ToSeries(maximumIsOfTheDayBefore: false), faults.Told(refusalsAreLeftOut: true));
    }

    private static List<ReadDay> Read(WeatherFile file, DateOnly today, PositionTrack positions, FaultList faults)
    {
        List<ReadDay> rows = [];
        ReadOnlySpan<byte> place = [];
        foreach (NumberedLine line in new TextLines(file.Text.Span))
        {
            ReadOnlySpan<byte> record = line.Text;
            if (ReadRecord(record, file.Name, line.Number, today, faults) is not { } row) continue;
            rows.Add(row);
            ReadOnlySpan<byte> written = record.Slice(PositionStart, PositionLength);
            if (!written.SequenceEqual(place)) positions.Meet(PositionOf(record), file.Name, line.Number, faults);
            place = written;
        }

        return rows;
    }

    private static ReadDay? ReadRecord(ReadOnlySpan<byte> record, string file, int line, DateOnly today, FaultList faults)
    {
        if (!IsInColumns(record))
        {
            faults.Add(FaultKind.FieldCount, NotInColumns(file, line, Encoding.UTF8.GetString(record[..Math.Min(record.Length, 100)]), record.Length));
            return null;
        }

        string date = Encoding.UTF8.GetString(record.Slice(DateStart, DateLength));
        if (!DateOnly.TryParseExact(date, "yyyyMMdd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day))
        {
            faults.Add(FaultKind.Date, RowFaults.NotADate(file, line, "LST_DATE", date, "a date of the calendar in the form yyyyMMdd."));
            return null;
        }

        if (day > today || day < RowLimits.EarliestDay)
        {
            faults.Add(FaultKind.Date, day > today
                ? RowFaults.InTheFuture(file, line, "LST_DATE", date, today)
                : RowFaults.BeforeRecords(file, line, "LST_DATE", date));
            return null;
        }

        ReadDay row = new(day, file, line);
        foreach (FixedField field in Fields) ReadField(record, field, row, faults);
        if (row.IsUsable && row[WeatherVariable.MinimumAirC] > row[WeatherVariable.MaximumAirC])
        {
            row.IsUsable = false;
            faults.Add(FaultKind.MinimumAboveMaximum, RowFaults.MinimumAboveMaximum(
                file, line, "T_DAILY_MIN and T_DAILY_MAX", DayText.Number(row[WeatherVariable.MinimumAirC]), DayText.Number(row[WeatherVariable.MaximumAirC])));
        }

        return row;
    }

    private static void ReadField(ReadOnlySpan<byte> record, FixedField field, ReadDay row, FaultList faults)
    {
        ReadOnlySpan<byte> text = record.Slice(field.Start, field.Length).Trim((byte)' ');
        if (!double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) || !double.IsFinite(value))
        {
            faults.Add(FaultKind.NotANumber, RowFaults.NotANumber(row.File, row.Line, field.Name, Encoding.UTF8.GetString(text), field.IsRequired));
            row.IsUsable &= !field.IsRequired;
            return;
        }

        if (value is Missing or MissingMoisture) return;
        PossibleValues possible = PossibleValues.Of(field.Variable);
        if (possible.Contains(value))
        {
            row[field.Variable] = value;
            return;
        }

        row.IsUsable &= !field.IsRequired;
        faults.Add(FaultKind.OutsideRecords, RowFaults.OutsideRecords(
            row.File, row.Line, field.Name, Encoding.UTF8.GetString(text), possible,
            $"{DayText.Number(possible.Lowest)} to {DayText.Number(possible.Highest)} {possible.Unit}", field.IsRequired));
    }

    // A position that is not a number is not worth the line: it is as unknown as the code -9999.
    private static StationPosition PositionOf(ReadOnlySpan<byte> record)
    {
        bool isRead = double.TryParse(record.Slice(LatitudeStart, CoordinateLength).Trim((byte)' '), NumberStyles.Float, CultureInfo.InvariantCulture, out double latitude);
        isRead &= double.TryParse(record.Slice(PositionStart, CoordinateLength).Trim((byte)' '), NumberStyles.Float, CultureInfo.InvariantCulture, out double longitude);
        return isRead ? new StationPosition(latitude, longitude, null) : new StationPosition(double.NaN, double.NaN, null);
    }

    private static bool IsInColumns(ReadOnlySpan<byte> record)
    {
        if (record.Length < RecordLength || !record[RecordLength..].Trim((byte)' ').IsEmpty) return false;
        foreach (int blank in Blanks)
        {
            if (record[blank] != ' ') return false;
        }

        return true;
    }

    private static Fault NotInColumns(string file, int line, string start, int length) => new()
    {
        Severity = FaultSeverity.LeftOut,
        File = file,
        Line = line,
        Problem = $"The line is not in the fixed columns of a daily file of the US Climate Reference Network: it is {length:N0} characters long. It is left out.",
        Found = start,
        Accepted = $"{RecordLength} characters in 28 fields, as product CRND0103 has them.",
    };

    private sealed record FixedField(WeatherVariable Variable, string Name, int Start, int Length)
    {
        public bool IsRequired => Variable is WeatherVariable.MinimumAirC or WeatherVariable.MaximumAirC;
    }
}
