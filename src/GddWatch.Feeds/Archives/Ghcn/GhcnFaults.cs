using System.Text;
using GddWatch.Feeds.Faults;
using GddWatch.Feeds.Reading;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Feeds.Archives.Ghcn;

/// <summary>What is said about files of GHCN-Daily.</summary>
internal static class GhcnFaults
{
    public static Fault NotARecord(string file, int line, string accepted, ReadOnlySpan<byte> record) => LeftOut(
        file, line, null, $"The line is not a record of GHCN-Daily: it is {record.Length:N0} bytes long. It is left out.", Start(record), accepted);

    public static Fault NotADate(string file, int line, string column, ReadOnlySpan<byte> found, string accepted) =>
        LeftOut(file, line, column, "This is not a date. The line is left out.", Start(found), accepted);

    public static Fault NotAFlag(string file, int line, string column, ReadOnlySpan<byte> found) =>
        LeftOut(file, line, column, "A flag has one character. The value is left out.", Start(found), "one letter or digit, or nothing.");

    public static Fault NotAWholeNumber(string file, int line, string column, ReadOnlySpan<byte> found, GhcnElement element) => LeftOut(
        file, line, column, "This is not a whole number. The value is left out.", Start(found),
        element == GhcnElement.SnowDepth ? "whole millimetres, or -9999 where nothing is known." : "whole tenths, 123 for 12.3, or -9999 where nothing is known.");

    public static Fault NoSuchDay(string file, int line, string column, int year, int month, string found) => LeftOut(
        file, line, column, $"{year:0000}-{month:00} has {DateTime.DaysInMonth(year, month)} days. The value is left out.", found, "-9999 after the month's last day.");

    public static Fault OutsideRecords(string file, in GhcnValue value)
    {
        PossibleValues possible = value.Element.Possible();
        return LeftOut(
            file, value.Line, value.Element.Code(), $"The value of {DayText.Of(value.Day)} is outside everything measured on earth. It is left out.",
            $"{value.Value}, that is {DayText.Number(value.Element.ToRecordUnit(value.Value))} {possible.Unit}",
            $"{possible.What} of {DayText.Number(possible.Lowest)} to {DayText.Number(possible.Highest)} {possible.Unit}.");
    }

    public static Fault Again(string file, in GhcnValue value, bool isTheSame) => new()
    {
        Severity = isTheSame ? FaultSeverity.Remark : FaultSeverity.LeftOut,
        File = file,
        Line = value.Line,
        Column = value.Element.Code(),
        Problem = $"{DayText.Of(value.Day)} is there a second time {(isTheSame ? "with the same value. It counts once." : "with another value. The first one stands.")}",
        Found = DayText.Number(value.Value),
        Accepted = "one value for each element and day.",
    };

    public static Fault MinimumAboveMaximum(ReadDay row) => LeftOut(
        row.File, row.Line, "TMIN and TMAX", $"The minimum of {DayText.Of(row.Day)} is above its maximum. Both are left out.",
        $"{DayText.Number(row[WeatherVariable.MinimumAirC])} °C and {DayText.Number(row[WeatherVariable.MaximumAirC])} °C",
        "a minimum that is not above the maximum.");

    public static Fault SeveralStations(string name, IEnumerable<string> stations) => Refused(
        name, $"The files hold several stations, and which one is the site's cannot be known: {string.Join(", ", stations.Select(Short))}.", "station: and the id of one of them.");

    public static Fault NoSuchStation(string name, string station, IReadOnlyCollection<string> others) => Refused(
        name, $"No line is of the station \"{station}\".", others.Count == 0 ? "files of GHCN-Daily that hold it." : $"a station that is there, such as {string.Join(", ", others.Select(Short))}.");

    public static Fault NoStationNamed(string name) => Refused(
        name, "Files by year hold every station of the world, and the feed does not say which one is the site's.", "station: and its id of 11 characters, such as USW00094846.");

    public static Fault NotStationColumns(string name, int line, string missing, bool hasDegrees) => Refused(
        name, line,
        hasDegrees ? $"The file has {missing} with decimals, so it is not in tenths as the archive's own files are." : $"The header does not have {missing}.",
        "a station's file as the archive keeps it: STATION, DATE, TMAX, TMAX_ATTRIBUTES, TMIN, TMIN_ATTRIBUTES, in tenths of °C; other exports are read with csv: and their units.");

    public static Fault HourUnknown(string name) => new()
    {
        Severity = FaultSeverity.Remark,
        File = name,
        Problem = "The station is a co-operative one, and the files do not say at what hour it is read. Its maximum is taken as of the day under which it stands.",
        Accepted = "observed-at: morning where it is read in the morning, when the maximum is of the day before, as at many such stations; else observed-at: midnight.",
    };

    // What stands in the place of an id in a spoiled line can be of any length.
    private static string Short(string station) => station.Length <= 20 ? station : $"{station[..20]}…";

    private static string Start(ReadOnlySpan<byte> text) => Encoding.UTF8.GetString(text[..Math.Min(text.Length, 100)]);

    private static Fault Refused(string name, string problem, string accepted) => new() { Severity = FaultSeverity.Refused, File = name, Problem = problem, Accepted = accepted };

    private static Fault Refused(string name, int line, string problem, string accepted) => Refused(name, problem, accepted) with { Line = line };

    private static Fault LeftOut(string file, int line, string? column, string problem, string? found, string accepted) => new()
    {
        Severity = FaultSeverity.LeftOut,
        File = file,
        Line = line,
        Column = column,
        Problem = problem,
        Found = found,
        Accepted = accepted,
    };
}
