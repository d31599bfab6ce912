namespace GddWatch.Feeds.Archives;

/// <summary>Files of a public weather archive.</summary>
/// <param name="Kind">The archive's format.</param>
/// <param name="Files">The files: a path in which "*" stands for any text within one folder or file name.</param>
public sealed record ArchiveFeedDefinition(ArchiveKind Kind, string Files) : FeedDefinition;
