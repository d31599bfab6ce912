namespace GddWatch.Agronomy.Soil;

/// <summary>Soil temperature corrected by probe readings.</summary>
/// <param name="Columns">The corrected daily means and their deviations.</param>
/// <param name="Readings">Every reading with its verdict, in the order of time.</param>
public sealed record ProbedSoil(SoilTemperatureColumns Columns, IReadOnlyList<JudgedReading> Readings);
