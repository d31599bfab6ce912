using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Places;

/// <summary>One season of a treatment at a site.</summary>
/// <param name="Year">The year in which it begins; the season is called by it.</param>
/// <param name="Span">Its days.</param>
public readonly record struct Season(int Year, DateSpan Span);
