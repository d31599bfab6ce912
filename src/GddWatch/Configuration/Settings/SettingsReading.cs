namespace GddWatch.Configuration.Settings;

/// <summary>What one reading of the settings gave.</summary>
/// <param name="Settings">The settings; null where anything in them is wrong.</param>
/// <param name="Faults">Everything that is wrong, a sentence each that names the key, what was found and what is accepted.</param>
public sealed record SettingsReading(ServiceSettings? Settings, IReadOnlyList<string> Faults);
