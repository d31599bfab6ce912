namespace GddWatch.Configuration.Settings;

/// <summary>The section Health as it was written, in text. <see cref="SettingsReader"/> checks it.</summary>
public sealed class HealthSettings
{
    /// <summary>The name of the section.</summary>
    public const string Section = "Health";

    /// <summary>The port of this machine on which the service says how it is; 0 for none.</summary>
    public string Port { get; set => field = value ?? ""; } = "0";
}
