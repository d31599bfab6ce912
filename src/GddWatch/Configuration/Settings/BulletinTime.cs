namespace GddWatch.Configuration.Settings;

/// <summary>When the weekly bulletin goes out.</summary>
/// <param name="On">The day of the week, in the region's calendar.</param>
/// <param name="At">The time of day before which it is not sent; null for as soon as it is written.</param>
/// <param name="TimeZone">The time zone of that time; null for the region's.</param>
public sealed record BulletinTime(DayOfWeek On, TimeOnly? At, string? TimeZone)
{
    /// <summary>Where nothing is configured: on Monday, as soon as it is written.</summary>
    public static BulletinTime Usual { get; } = new(DayOfWeek.Monday, null, null);

    /// <summary>The bulletin's day that a day belongs to: itself, or the last one before it.</summary>
    public DateOnly LastOn(DateOnly day) => day.AddDays(-(((int)day.DayOfWeek - (int)On + 7) % 7));

    /// <summary>The instant before which a bulletin of a day is not sent; null for none.</summary>
    public DateTimeOffset? NotBefore(DateOnly day, TimeZoneInfo regionZone)
    {
        if (At is not { } at) return null;
        TimeZoneInfo zone = TimeZone is { } own ? TimeZoneInfo.FindSystemTimeZoneById(own) : regionZone;
        DateTime local = day.ToDateTime(at);
        while (zone.IsInvalidTime(local)) local = local.AddMinutes(1);
        return new DateTimeOffset(local, zone.GetUtcOffset(local));
    }
}
