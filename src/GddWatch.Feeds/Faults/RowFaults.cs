using GddWatch.Feeds.Reading;

namespace GddWatch.Feeds.Faults;

/// <summary>What is said about rows and their cells.</summary>
internal static class RowFaults
{
    public static Fault Quotes(string file, int line, string row) => LeftOut(
        file, line, null, "The quotation marks of this line do not pair up. The line is left out.", row,
        "a field without quotation marks, or one that begins and ends with them on the same line.");

    public static Fault FieldCount(string file, int line, int found, int expected, string row) => LeftOut(
        file, line, null, $"The line has {DayText.Count(found, "field", "fields")} where the header has {expected}. It is left out.", row,
        found > expected
            ? $"{expected} fields; a decimal comma counts as a separator, so write a decimal point."
            : $"{expected} fields, an empty one where a value is missing.");

    public static Fault LongLine(string file, int line, int bytes, string start) => LeftOut(
        file, line, null, $"The line is {bytes:N0} bytes long, which no day's weather is. It is left out.", start, $"a line of up to {RowLimits.LongestLineBytes:N0} bytes.");

    public static Fault NotADate(string file, int line, string column, string found, string accepted) =>
        LeftOut(file, line, column, "This is not a date. The line is left out.", found, accepted);

    public static Fault NoSuch29February(string file, int line, string column, string found, int year) => LeftOut(
        file, line, column, $"February {year} has 28 days. The line is left out.", found, "a day of the calendar; 29 February only in leap years.");

    public static Fault InTheFuture(string file, int line, string column, string found, DateOnly today) => LeftOut(
        file, line, column, $"The day is still to come: today is {DayText.Of(today)} at the site. The line is left out.", found,
        "days up to today; look at the order of day and month, and at the century.");

    public static Fault BeforeRecords(string file, int line, string column, string found) => LeftOut(
        file, line, column, "The day is before daily temperatures were measured anywhere. The line is left out.", found,
        $"days from {RowLimits.EarliestDay:yyyy-MM-dd} on; look at the century and at the date format.");

    public static Fault NotANumber(string file, int line, string column, string found, bool costsTheRow)
    {
        bool comma = found.Contains(',', StringComparison.Ordinal);
        string problem = found.Length == 0 ? "The value is empty, and an empty one is not listed as missing." : comma ? "This is not a number with a decimal point." : "This is not a number.";
        return LeftOut(
            file, line, column, $"{problem} {WhatIsLost(costsTheRow)}", found,
            comma ? "a decimal point and no thousands separator, such as 12.5." : "a number such as 12.5 or -3, or a text that is listed under missing.");
    }

    public static Fault OutsideRecords(string file, int line, string column, string found, PossibleValues possible, string bounds, bool costsTheRow) => LeftOut(
        file, line, column, $"This is outside everything measured on earth. {WhatIsLost(costsTheRow)}", found,
        $"{possible.What} of {bounds}; a code for a missing value is listed under missing.");

    public static Fault MinimumAboveMaximum(string file, int line, string column, string minimum, string maximum) => LeftOut(
        file, line, column, "The minimum is above the maximum. The line is left out.", $"{minimum} and {maximum}",
        "a minimum that is not above the maximum; look whether the two columns are exchanged.");

    public static Fault MorningContradiction(ReadDay minimumRow, ReadDay maximumRow, double minimumC, double maximumC) => LeftOut(
        minimumRow.File, minimumRow.Line, null,
        $"Read in the morning, the minimum of {DayText.Of(minimumRow.Day)} is above the maximum that line {maximumRow.Line} gives for that day. Both are left out.",
        $"{DayText.Number(minimumC)} °C and {DayText.Number(maximumC)} °C",
        "a minimum that is not above the maximum of its day; look whether the station is really read in the morning.");

    public static Fault TwoMaxima(ReadDay own, ReadDay next) => LeftOut(
        next.File, next.Line, null,
        $"The hour of reading changes here: {DayText.Of(own.Day)} has a maximum of its own, and the one read in the morning of {DayText.Of(next.Day)} is for it too. That one is left out.", null,
        "one maximum a day; nothing to do where the station's hour was really changed.");

    public static Fault Repeated(ReadDay again, ReadDay first) => new()
    {
        Severity = FaultSeverity.Remark,
        File = again.File,
        Line = again.Line,
        Problem = $"{DayText.Of(again.Day)} is there a second time with the same values, first {PlaceOf(first, again)}. It counts once.",
        Accepted = "one line a day.",
    };

    public static Fault Contradicted(ReadDay again, ReadDay first) => LeftOut(
        again.File, again.Line, null, $"{DayText.Of(again.Day)} is there a second time with other values. The first one, {PlaceOf(first, again)}, stands.", null,
        "one line a day; remove the one that is wrong.");

    private static string PlaceOf(ReadDay first, ReadDay again) =>
        string.Equals(first.File, again.File, StringComparison.Ordinal) ? $"on line {first.Line}" : $"in {first.File} on line {first.Line}";

    private static string WhatIsLost(bool costsTheRow) => costsTheRow ? "The line is left out." : "The value is left out, the rest of the line is used.";

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
