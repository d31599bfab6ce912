namespace GddWatch.Configuration.Settings;

/// <summary>The section Schedule as it was written, in text. <see cref="SettingsReader"/> checks it.</summary>
public sealed class ScheduleSettings
{
    /// <summary>The name of the section.</summary>
    public const string Section = "Schedule";

    /// <summary>The time of the daily pass in the region's time zone, as hours:minutes.</summary>
    public string At { get; set => field = value ?? ""; } = "06:00";
}
