using GddWatch.Agronomy.Places;

namespace GddWatch.Agronomy.Changes;

/// <summary>A notice and the people to whom it goes.</summary>
/// <param name="Notice">The notice.</param>
/// <param name="Recipients">The people.</param>
public sealed record PlannedNotice(Notice Notice, IReadOnlyList<Recipient> Recipients);
