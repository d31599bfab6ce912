namespace GddWatch.Agronomy.Changes;

/// <summary>One thing that a notice tells, to be remembered once it is queued.</summary>
/// <param name="Key">Which change of which window.</param>
/// <param name="Day">The day on which it came by the weather; null where the notice says that it has not come.</param>
public sealed record ToldFact(NoticeKey Key, DateOnly? Day);
