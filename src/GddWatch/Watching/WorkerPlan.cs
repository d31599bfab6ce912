namespace GddWatch.Watching;

/// <summary>When the worker passes: a pure answer, tested without waiting.</summary>
/// <param name="PassAt">The time of day of the daily pass, in the region's time zone.</param>
/// <param name="TimeZone">The region's time zone.</param>
/// <param name="Once">Whether there is one pass only.</param>
internal sealed record WorkerPlan(TimeOnly PassAt, string TimeZone, bool Once)
{
    /// <summary>How often waiting messages are looked at between the daily passes.</summary>
    public static readonly TimeSpan DeliveryEvery = TimeSpan.FromMinutes(1);

    /// <summary>The next daily pass after an instant. Where the clocks skip that time of day, the pass comes when they have been put forward.</summary>
    public DateTimeOffset NextPassAfter(DateTimeOffset now)
    {
        TimeZoneInfo zone = TimeZoneInfo.FindSystemTimeZoneById(TimeZone);
        DateOnly day = DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(now, zone).DateTime);
        while (true)
        {
            DateTime local = day.ToDateTime(PassAt);
            while (zone.IsInvalidTime(local)) local = local.AddMinutes(1);
            var next = new DateTimeOffset(local, zone.GetUtcOffset(local));
            if (next > now) return next;
            day = day.AddDays(1);
        }
    }
}
