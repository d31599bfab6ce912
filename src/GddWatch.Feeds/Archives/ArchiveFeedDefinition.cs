using GddWatch.Feeds.Csv;

namespace GddWatch.Feeds.Archives;

/// <summary>Files of a public weather archive.</summary>
/// <param name="Kind">The archive's format.</param>
/// <param name="Files">The files: a path in which "*" stands for any text within one folder or file name.</param>
/// <param name="Station">The station's id in the archive; required where files hold many stations.</param>
/// <param name="ObservedAt">When the station is read, for values whose time the files do not tell; null where nobody said.</param>
public sealed record ArchiveFeedDefinition(ArchiveKind Kind, string Files, string? Station = null, ObservationTime? ObservedAt = null) : FeedDefinition;
