using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;

namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>How a doubt's reason names values, in °C.</summary>
internal static class DoubtWords
{
    public static string Name(WeatherVariable variable) => variable == WeatherVariable.MinimumAirC ? "minimum" : "maximum";

    /// <summary>The beginning of a reason: "The maximum of Sunday 3 May 2026, 36 °C,".</summary>
    public static string Subject(WeatherVariable variable, DateOnly day, double valueC) => $"The {Name(variable)} of {Wording.Day(day)}, {Degrees(valueC)},";

    public static string Degrees(double celsius) => Wording.Temperature(celsius, ReadersUnits.Metric);

    public static string Difference(double celsius) => Wording.TemperatureDifference(celsius, ReadersUnits.Metric);

    public static string Month(int month) => new DateOnly(2024, month, 1).ToString("MMMM", System.Globalization.CultureInfo.InvariantCulture);
}
