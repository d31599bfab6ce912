using GddWatch.Feeds.Faults;

namespace GddWatch.Configuration;

/// <summary>What one reading of the configuration gave.</summary>
/// <param name="Configuration">The configuration; null where anything in it is wrong.</param>
/// <param name="Faults">Everything that is wrong, in both files at once.</param>
public sealed record ConfigurationReading(WatchConfiguration? Configuration, IReadOnlyList<Fault> Faults);
