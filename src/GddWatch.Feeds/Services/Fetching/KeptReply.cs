namespace GddWatch.Feeds.Services.Fetching;

/// <summary>A reply that may be asked about again: "has it changed since?"</summary>
/// <param name="Address">What was asked.</param>
/// <param name="ETag">The tag that the service gave it; null where it gave none.</param>
/// <param name="LastModified">When the service says that it was changed last; null where it does not.</param>
/// <param name="Body">The reply.</param>
public sealed record KeptReply(Uri Address, string? ETag, DateTimeOffset? LastModified, ReadOnlyMemory<byte> Body);
