using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Treatments;

/// <summary>What the past windows of a treatment are compared with: other ways by which people find the day, and what is seen when the day was right.</summary>
/// <param name="Calendar">The fixed date that people go by, written for the north; null where none is given.</param>
/// <param name="CalendarNote">Where people go by it, in a few words; may be empty.</param>
/// <param name="Air">The naive rule on a running mean of air temperature; null takes the one that the opening's soil temperature suggests.</param>
/// <param name="Seen">What is seen outdoors, and how long before it the window should open.</param>
public sealed record RivalRules(AnnualDay? Calendar, string CalendarNote, RunningMeanRule? Air, IReadOnlyList<SeenEvent> Seen)
{
    /// <summary>Nothing to compare with.</summary>
    public static RivalRules None { get; } = new(null, "", null, []);
}
