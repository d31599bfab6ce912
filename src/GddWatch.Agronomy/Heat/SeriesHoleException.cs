using System.Globalization;

namespace GddWatch.Agronomy.Heat;

/// <summary>A series that must be complete has a hole.</summary>
/// <param name="variable">What is missing, in words.</param>
/// <param name="firstMissingDay">The first day on which it is missing.</param>
/// <param name="missingDays">On how many days of the series it is missing [days].</param>
public sealed class SeriesHoleException(string variable, DateOnly firstMissingDay, int missingDays)
    : ArgumentException(Says(variable, firstMissingDay, missingDays), nameof(variable))
{
    /// <summary>The first day on which something is missing.</summary>
    public DateOnly FirstMissingDay { get; } = firstMissingDay;

    /// <summary>On how many days of the series it is missing [days].</summary>
    public int MissingDays { get; } = missingDays;

    private static string Says(string variable, DateOnly day, int days)
    {
        string which = days == 1 ? "on that day alone" : $"on {days} days in all, that one first";
        return string.Create(
            CultureInfo.InvariantCulture, $"{variable} of {day:dddd yyyy-MM-dd} was NaN (missing), {which}; allowed is a series that knows it on every day. Fill the hole first.");
    }
}
