namespace GddWatch.Agronomy.Places;

/// <summary>The time of day in which a person wants no mail, by the clock where that person lives.</summary>
/// <param name="From">When it begins.</param>
/// <param name="Until">When it ends; at or before <paramref name="From"/> it is the next morning.</param>
public sealed record QuietHours(TimeOnly From, TimeOnly Until)
{
    /// <summary>
    /// When the quiet that reigns at an instant ends; null where none does. Where the clocks are put forward over the end, it ends with them; where they are put back
    /// over it, at the later of the two.
    /// </summary>
    public DateTimeOffset? EndAfter(DateTimeOffset at, TimeZoneInfo zone)
    {
        ArgumentNullException.ThrowIfNull(zone);
        DateTime local = TimeZoneInfo.ConvertTime(at, zone).DateTime;
        TimeOnly clock = TimeOnly.FromDateTime(local);
        bool isOvernight = Until <= From;
        bool isQuiet = isOvernight ? clock >= From || clock < Until : clock >= From && clock < Until;
        if (!isQuiet) return null;
        DateOnly day = DateOnly.FromDateTime(local);
        DateTime end = (isOvernight && clock >= From ? day.AddDays(1) : day).ToDateTime(Until);
        while (zone.IsInvalidTime(end)) end = end.AddMinutes(1);
        // Of two instants with one reading, the later is the one further behind.
        TimeSpan offset = zone.IsAmbiguousTime(end) ? zone.GetAmbiguousTimeOffsets(end).Min() : zone.GetUtcOffset(end);
        return new DateTimeOffset(end, offset);
    }
}
