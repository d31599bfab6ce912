namespace GddWatch.Agronomy.Changes;

/// <summary>One curve and the range of earlier years around it, each with one value a day; empty ranges where fewer than ten earlier years are known.</summary>
/// <param name="Now">This year; null where it is not known, and on days to come.</param>
/// <param name="Low">The value that one in ten earlier years was below.</param>
/// <param name="High">The value that one in ten earlier years was above.</param>
public sealed record ChartCurve(IReadOnlyList<double?> Now, IReadOnlyList<double> Low, IReadOnlyList<double> High);
