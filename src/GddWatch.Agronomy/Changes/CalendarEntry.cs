namespace GddWatch.Agronomy.Changes;

/// <summary>The window of a notice as an entry of a calendar, in whole days. Its identity is that of the window (<see cref="NoticeKey.WindowId"/>), so that a later notice moves it.</summary>
/// <param name="Sequence">How often something had been told of the window, this time included: a calendar takes a higher number in the place of a lower one.</param>
/// <param name="First">The day of the opening.</param>
/// <param name="End">The day after the last one: that of the close, known or expected.</param>
/// <param name="EndWords">Where the end comes from, in a sentence.</param>
/// <param name="IsWithdrawn">Whether it is withdrawn, since it is held or has not opened after all.</param>
public sealed record CalendarEntry(int Sequence, DateOnly First, DateOnly End, string EndWords, bool IsWithdrawn);
