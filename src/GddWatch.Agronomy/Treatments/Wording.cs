using System.Globalization;
using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Treatments;

/// <summary>How quantities and dates are written for people: each number with its unit, each date with its weekday.</summary>
public static class Wording
{
    private static readonly CultureInfo English = CultureInfo.InvariantCulture;

    /// <summary>A date such as "Sunday 12 April 2026".</summary>
    public static string Day(DateOnly day) => $"{DayInYear(day)} {day.Year:D4}";

    /// <summary>A date whose year is plain from the context, such as "Sunday 12 April".</summary>
    public static string DayInYear(DateOnly day) => $"{English.DateTimeFormat.GetDayName(day.DayOfWeek)} {day.Day} {English.DateTimeFormat.GetMonthName(day.Month)}";

    /// <summary>A day of any year, such as "1 May".</summary>
    public static string AnnualDay(AnnualDay day) => day.In(2024).ToString("d MMMM", English);

    /// <summary>A temperature such as "51.2 °F".</summary>
    public static string Temperature(double celsius, ReadersUnits units)
    {
        Temperature temperature = Quantities.Temperature.FromCelsius(celsius);
        return units == ReadersUnits.UnitedStates ? $"{Number(temperature.Fahrenheit)} °F" : $"{Number(temperature.Celsius)} °C";
    }

    /// <summary>A temperature such as "51.2 °F".</summary>
    public static string Temperature(Temperature temperature, ReadersUnits units) => Temperature(temperature.Celsius, units);

    /// <summary>A difference of temperature such as "2.3 °F".</summary>
    public static string TemperatureDifference(double celsius, ReadersUnits units)
    {
        TemperatureDifference difference = Quantities.TemperatureDifference.FromCelsius(celsius);
        return units == ReadersUnits.UnitedStates ? $"{Number(difference.Fahrenheit)} °F" : $"{Number(difference.Celsius)} °C";
    }

    /// <summary>Heat such as "352 °F-days".</summary>
    public static string Heat(double celsiusDays, ReadersUnits units) => units == ReadersUnits.UnitedStates
        ? $"{Math.Round(celsiusDays * 9.0 / 5.0).ToString(English)} °F-days"
        : $"{Math.Round(celsiusDays).ToString(English)} °C-days";

    /// <summary>A depth such as "2 inches" or "5 cm".</summary>
    public static string Depth(Depth depth, ReadersUnits units)
    {
        if (units == ReadersUnits.Metric) return $"{Number(depth.Centimetres)} cm";
        string inches = Number(depth.Inches);
        return inches == "1" ? "1 inch" : $"{inches} inches";
    }

    /// <summary>A depth of water such as "0.45 inches" or "11 mm".</summary>
    public static string Water(double millimetres, ReadersUnits units)
    {
        if (units == ReadersUnits.Metric) return $"{Number(millimetres)} mm";
        string inches = Math.Round(millimetres / 25.4, 2, MidpointRounding.AwayFromZero).ToString("0.##", English);
        return inches == "1" ? "1 inch" : $"{inches} inches";
    }

    /// <summary>The words with a capital letter in front.</summary>
    public static string Capital(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];

    /// <summary>A number of days such as "1 day" or "5 days".</summary>
    public static string Days(int days) => days == 1 ? "1 day" : $"{days} days";

    /// <summary>A list such as "a, b and c".</summary>
    public static string List(IReadOnlyList<string> parts)
    {
        ArgumentNullException.ThrowIfNull(parts);
        return parts.Count switch
        {
            0 => "",
            1 => parts[0],
            _ => $"{string.Join(", ", parts.Take(parts.Count - 1))} and {parts[^1]}",
        };
    }

    /// <summary>A list such as "a, b or c".</summary>
    public static string Alternatives(IReadOnlyList<string> parts)
    {
        ArgumentNullException.ThrowIfNull(parts);
        return parts.Count < 2 ? List(parts) : $"{string.Join(", ", parts.Take(parts.Count - 1))} or {parts[^1]}";
    }

    private static string Number(double value)
    {
        double rounded = Math.Round(value, 1, MidpointRounding.AwayFromZero);
        return (rounded == 0 ? 0 : rounded).ToString("0.#", English);
    }
}
