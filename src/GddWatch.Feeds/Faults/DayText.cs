using System.Globalization;

namespace GddWatch.Feeds.Faults;

/// <summary>Days and numbers as people read them in a fault.</summary>
internal static class DayText
{
    public static string Of(DateOnly day) => day.ToString("ddd yyyy-MM-dd", CultureInfo.InvariantCulture);

    public static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    public static string Count(int count, string singular, string plural) =>
        $"{count.ToString("N0", CultureInfo.InvariantCulture)} {(count == 1 ? singular : plural)}";
}
