using System.Globalization;
using System.Xml;

namespace GddWatch.Feeds.Services.UsWeather;

/// <summary>The time for which a value of the gridded forecast holds: start and duration in ISO 8601, such as "2026-05-01T12:00:00+00:00/PT13H".</summary>
internal readonly record struct ValidTime(DateTimeOffset Start, DateTimeOffset End)
{
    // A week is more than any layer of daily values needs.
    private static readonly TimeSpan Longest = TimeSpan.FromDays(8);

    /// <summary>Reads one; null where the text is none, or none of a plausible length.</summary>
    public static ValidTime? Read(string? text)
    {
        if (text?.Split('/') is not [{ } first, { } length] || length.Contains('Y', StringComparison.Ordinal) || length.Split('T')[0].Contains('M', StringComparison.Ordinal)) return null;
        if (!DateTimeOffset.TryParseExact(first, "yyyy-MM-dd'T'HH:mm:sszzz", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateTimeOffset start)) return null;
        if (start.Year is < 1900 or > 9000) return null;
        try
        {
            TimeSpan duration = XmlConvert.ToTimeSpan(length);
            return duration > TimeSpan.Zero && duration <= Longest ? new ValidTime(start, start + duration) : null;
        }
        catch (Exception failure) when (failure is FormatException or OverflowException)
        {
            return null;
        }
    }

    /// <summary>How long it overlaps with another time.</summary>
    public TimeSpan OverlapWith(DateTimeOffset from, DateTimeOffset until)
    {
        TimeSpan overlap = (End < until ? End : until) - (Start > from ? Start : from);
        return overlap > TimeSpan.Zero ? overlap : TimeSpan.Zero;
    }
}
