using GddWatch.Storage;

namespace GddWatch.Watching;

/// <summary>What a daily pass did.</summary>
/// <param name="Day">The day as of which was judged.</param>
/// <param name="Windows">The windows as they were judged.</param>
/// <param name="MessagesQueued">How many new messages were queued.</param>
/// <param name="Failures">What went wrong with single sites, a sentence each; the others are not affected.</param>
internal sealed record PassReport(DateOnly Day, IReadOnlyList<KeptWindow> Windows, int MessagesQueued, IReadOnlyList<string> Failures);
