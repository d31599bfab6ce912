namespace GddWatch.Agronomy.Soil;

/// <summary>A probe reading and what became of it.</summary>
/// <param name="Reading">The reading.</param>
/// <param name="Verdict">What became of it.</param>
/// <param name="DailyMeanC">The mean of its day that it stands for [°C]; null without an estimate.</param>
/// <param name="ExpectedC">The mean that the estimate, corrected by the readings before, expected at its depth [°C]; null without an
/// estimate.</param>
/// <param name="Deviations">How far the two lie apart, in standard deviations of what was expected; null without an estimate.</param>
public sealed record JudgedReading(ProbeReading Reading, ReadingVerdict Verdict, double? DailyMeanC, double? ExpectedC, double? Deviations);
