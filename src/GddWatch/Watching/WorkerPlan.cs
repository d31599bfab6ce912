namespace GddWatch.Watching;

/// <summary>When the worker passes: a pure answer, tested without waiting.</summary>
/// <param name="PassAt">The time of day of the daily pass, in the region's time zone.</param>
/// <param name="TimeZone">The region's time zone.</param>
/// <param name="Once">Whether there is one pass only.</param>
internal sealed record WorkerPlan(TimeOnly PassAt, string TimeZone, bool Once)
{
    /// <summary>How often waiting messages are looked at between the daily passes.</summary>
    public static readonly TimeSpan DeliveryEvery = TimeSpan.FromMinutes(1);

    private TimeZoneInfo Zone => TimeZoneInfo.FindSystemTimeZoneById(TimeZone);

    /// <summary>The next daily pass after an instant. Where the clocks skip that time of day, the pass comes when they have been put forward.</summary>
    public DateTimeOffset NextPassAfter(DateTimeOffset now)
    {
        DateOnly day = DayAt(now);
        while (PassOn(day) <= now) day = day.AddDays(1);
        return PassOn(day);
    }

    /// <summary>The day whose pass was the last to come at or before an instant.</summary>
    public DateOnly LastPassDayAt(DateTimeOffset now)
    {
        DateOnly day = DayAt(now);
        return PassOn(day) <= now ? day : day.AddDays(-1);
    }

    /// <summary>The day in the region's calendar.</summary>
    public DateOnly DayAt(DateTimeOffset now) => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(now, Zone).DateTime);

    private DateTimeOffset PassOn(DateOnly day)
    {
        TimeZoneInfo zone = Zone;
        DateTime local = day.ToDateTime(PassAt);
        while (zone.IsInvalidTime(local)) local = local.AddMinutes(1);
        return new DateTimeOffset(local, zone.GetUtcOffset(local));
    }
}
