namespace GddWatch.Feeds.Services.UsWeather;

/// <summary>Instants of the days of a time zone, those of 23 and 25 hours included.</summary>
internal sealed class SiteCalendar(TimeZoneInfo zone)
{
    /// <summary>The day in which an instant lies.</summary>
    public DateOnly DayOf(DateTimeOffset instant) => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(instant, zone).DateTime);

    /// <summary>The instant of a clock time. Where the clocks leave it out, the instant at which they go on; where they show it twice, the first.</summary>
    public DateTimeOffset At(DateOnly day, int hour)
    {
        DateTime local = day.ToDateTime(new TimeOnly(hour, 0));
        while (zone.IsInvalidTime(local)) local = local.AddMinutes(30);
        TimeSpan offset = zone.IsAmbiguousTime(local) ? zone.GetAmbiguousTimeOffsets(local).Max() : zone.GetUtcOffset(local);
        return new DateTimeOffset(local, offset);
    }

    /// <summary>Where a day begins.</summary>
    public DateTimeOffset Start(DateOnly day) => At(day, 0);
}
