namespace GddWatch.Validation.Windows;

/// <summary>One season of a candidate.</summary>
/// <param name="Pair">Both windows.</param>
/// <param name="Dates">When crabgrass would come up.</param>
/// <param name="LaterThanBefore">By how much the estimated opening is later than by the opening before [days].</param>
/// <param name="IsDecidedByAir">Whether the air alone set the day of both.</param>
internal sealed record CandidateSeason(OpeningPair Pair, CrabgrassDates Dates, int? LaterThanBefore, bool IsDecidedByAir);
