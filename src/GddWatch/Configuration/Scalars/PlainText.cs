using System.Globalization;
using System.Text.RegularExpressions;
using GddWatch.Agronomy.Quantities;

namespace GddWatch.Configuration.Scalars;

/// <summary>Reads single values that have no unit: sentences, numbers, dates, true and false.</summary>
public static partial class PlainText
{
    internal const string DatePattern = @"^[0-9]{4}-[0-9]{2}-[0-9]{2}$";
    internal const string TimeOfDayPattern = @"^[0-9]{2}:[0-9]{2}$";
    internal const string AnnualDayPattern = @"^[0-9]{2}-[0-9]{2}$";

    /// <summary>Reads a text; lines that were folded become one, since names and sentences stand in the heads of mails too.</summary>
    public static ScalarReading Sentence(string text)
    {
        string plain = WhiteSpace().Replace(text, " ").Trim();
        if (plain.Length == 0) return ScalarReading.Refused("Nothing is written here.");
        return plain.Any(char.IsControl) ? ScalarReading.Refused("There is a character in it that cannot be printed.", "text of printable characters") : ScalarReading.Of(plain);
    }

    /// <summary>Reads a number with a decimal point.</summary>
    public static ScalarReading Number(string text) =>
        double.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number)
            ? ScalarReading.Of(number)
            : ScalarReading.Refused("This is not a number.");

    /// <summary>Reads true or false.</summary>
    public static ScalarReading Truth(string text) => text switch
    {
        "true" => ScalarReading.Of(true),
        "false" => ScalarReading.Of(false),
        _ => ScalarReading.Refused("This is neither true nor false."),
    };

    /// <summary>Reads a date such as "2027-01-01".</summary>
    public static ScalarReading Date(string text) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly date)
            ? ScalarReading.Of(date)
            : ScalarReading.Refused("This is not a date of the calendar.");

    /// <summary>Reads a time of day such as "21:00".</summary>
    public static ScalarReading TimeOfDay(string text) =>
        TimeOnly.TryParseExact(text, "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out TimeOnly time)
            ? ScalarReading.Of(time)
            : ScalarReading.Refused("This is not a time of day.");

    /// <summary>Reads a day of the year such as "05-01".</summary>
    public static ScalarReading AnnualDay(string text) =>
        text.Length == 5 && DateOnly.TryParseExact($"2024-{text}", "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day)
            ? ScalarReading.Of(Agronomy.Quantities.AnnualDay.Of(day))
            : ScalarReading.Refused("No year has such a day.");

    [GeneratedRegex(@"\s+", RegexOptions.None, 1000)]
    private static partial Regex WhiteSpace();
}
