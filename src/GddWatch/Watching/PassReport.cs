namespace GddWatch.Watching;

/// <summary>What a daily pass did.</summary>
/// <param name="Day">The day as of which was judged.</param>
/// <param name="WindowsJudged">How many windows were judged.</param>
/// <param name="MessagesQueued">How many new messages were queued.</param>
/// <param name="Failures">What went wrong with single sites, a sentence each; the others are not affected.</param>
internal sealed record PassReport(DateOnly Day, int WindowsJudged, int MessagesQueued, IReadOnlyList<string> Failures);
