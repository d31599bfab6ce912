namespace GddWatch.Configuration.Settings;

/// <summary>The section Schedule as it was written, in text. <see cref="SettingsReader"/> checks it.</summary>
public sealed class ScheduleSettings
{
    /// <summary>The name of the section.</summary>
    public const string Section = "Schedule";

    /// <summary>The time of the daily pass in the region's time zone, as hours:minutes.</summary>
    public string At { get; set => field = value ?? ""; } = "06:00";

    /// <summary>The day of the week of the bulletin, such as Monday; empty for none.</summary>
    public string BulletinOn { get; set => field = value ?? ""; } = "Monday";

    /// <summary>The time of day before which the bulletin is not sent, as hours:minutes; empty for as soon as it is written.</summary>
    public string BulletinAt { get; set => field = value ?? ""; } = "";

    /// <summary>The time zone of that time; empty for the region's.</summary>
    public string BulletinTimeZone { get; set => field = value ?? ""; } = "";
}
