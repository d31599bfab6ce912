using System.Globalization;

namespace GddWatch.Agronomy.Quantities;

/// <summary>Refusals of the core in one place: each message carries the name, the value found and the values allowed.</summary>
internal static class Demand
{
    public static double Finite(double value, string name) =>
        double.IsFinite(value) ? value : throw Refuse(name, value, "a finite number");

    public static double NotNegative(double value, string name) =>
        double.IsFinite(value) && value >= 0 ? value : throw Refuse(name, value, "0 or more");

    public static double Within(double value, double lowest, double highest, string name) =>
        value >= lowest && value <= highest ? value : throw Refuse(name, value, $"{Show(lowest)} to {Show(highest)}");

    public static int AtLeast(int value, int lowest, string name) =>
        value >= lowest ? value : throw Refuse(name, value, $"{lowest} or more");

    private static ArgumentOutOfRangeException Refuse(string name, double value, string allowed) =>
        new(name, value, $"{name} was {Show(value)}; allowed is {allowed}.");

    private static string Show(double value) => value.ToString("R", CultureInfo.InvariantCulture);
}
