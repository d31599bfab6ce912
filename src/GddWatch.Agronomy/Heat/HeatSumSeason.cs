namespace GddWatch.Agronomy.Heat;

/// <summary>One year of a heat sum.</summary>
/// <param name="Start">The day on which the sum went back to zero.</param>
/// <param name="CountsFrom">The first day whose heat counts: the start itself, or the day that met the biofix's condition; null where none has met it yet, or a
/// missing day hides which.</param>
public sealed record HeatSumSeason(DateOnly Start, DateOnly? CountsFrom);
