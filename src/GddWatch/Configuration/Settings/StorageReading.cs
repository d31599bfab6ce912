using GddWatch.Storage;

namespace GddWatch.Configuration.Settings;

/// <summary>What one reading of the section Storage gave.</summary>
/// <param name="Server">The server to keep things on; null for a file in the data folder.</param>
/// <param name="Faults">Everything that is wrong, a sentence each; while there is any, nothing may be kept anywhere.</param>
public sealed record StorageReading(DatabasePlace.OnServer? Server, IReadOnlyList<string> Faults);
