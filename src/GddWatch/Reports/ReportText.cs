using System.Globalization;
using GddWatch.Agronomy.Backtesting;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Commands.Output;

namespace GddWatch.Reports;

/// <summary>How figures and dates are written in a report.</summary>
internal static class ReportText
{
    public const string None = "–";

    /// <summary>A day of any year, such as "1 Apr".</summary>
    public static string Day(AnnualDay? day) => day is { } known ? known.In(2024).ToString("d MMM", CultureInfo.InvariantCulture) : None;

    /// <summary>A date whose year stands beside it, such as "Sun 1 Apr".</summary>
    public static string Day(DateOnly? day) => day is { } known ? Dates.Short(known) : None;

    /// <summary>Days with one decimal, such as "3.9 days".</summary>
    public static string Days(double days) => string.Create(CultureInfo.InvariantCulture, $"{days:0.0} days");

    /// <summary>Days before or after, such as "3.9 days later".</summary>
    public static string LaterOrEarlier(double days) => Math.Abs(days) < 0.05 ? "on the same day" : string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(days):0.0} days {(days > 0 ? "later" : "earlier")}");

    /// <summary>Whole days with their sign, such as "+4 days".</summary>
    public static string Signed(int days) => string.Create(CultureInfo.InvariantCulture, $"{days:+0;−0;0} {(Math.Abs(days) == 1 ? "day" : "days")}");

    /// <summary>Days with their sign, such as "+3.9 days".</summary>
    public static string Signed(double days) => string.Create(CultureInfo.InvariantCulture, $"{days:+0.0;−0.0;0.0} days");

    /// <summary>An interval in brackets; empty where there is none.</summary>
    public static string Interval(ConfidenceInterval? interval, double factor = 1, string unit = "") => interval is { } known
        ? string.Create(CultureInfo.InvariantCulture, $" ({Minus(known.Low * factor)}{unit} to {Minus(known.High * factor)}{unit})")
        : "";

    /// <summary>A temperature of a chart's axis.</summary>
    public static double Degrees(double celsius, ReadersUnits units) => units == ReadersUnits.UnitedStates ? celsius * 1.8 + 32 : celsius;

    /// <summary>Heat of a chart's axis.</summary>
    public static double Heat(double celsiusDays, ReadersUnits units) => units == ReadersUnits.UnitedStates ? celsiusDays * 1.8 : celsiusDays;

    /// <summary>A temperature in a table; a dash where it is not known.</summary>
    public static string Temperature(double celsius, ReadersUnits units) => double.IsFinite(celsius) ? Wording.Temperature(celsius, units) : None;

    /// <summary>Heat in a table.</summary>
    public static string HeatText(double celsiusDays, ReadersUnits units) => double.IsFinite(celsiusDays) ? Wording.Heat(celsiusDays, units) : None;

    /// <summary>A range of two figures of one unit, which is written once, such as "38 to 45 °F".</summary>
    public static string Range(string low, string high) => low.Split(' ', 2) is [var figure, var unit] && high.EndsWith($" {unit}", StringComparison.Ordinal) ? $"{figure} to {high}" : $"{low} to {high}";

    private static string Minus(double value) => value.ToString("0.#;−0.#;0", CultureInfo.InvariantCulture);
}
