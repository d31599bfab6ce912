namespace GddWatch.Agronomy.Weather.Filling;

/// <summary>A series as it is known on its last day, and what was filled in it.</summary>
/// <param name="Series">The series with its holes filled and marked.</param>
/// <param name="Fillings">What was put in, by day; none says when it will be replaced, since that is not known yet.</param>
public sealed record FilledSeries(DailySeries Series, IReadOnlyList<FilledValue> Fillings);
