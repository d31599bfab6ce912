namespace GddWatch.Configuration.Scalars;

/// <summary>A chance, above 0 and below 1.</summary>
public readonly record struct Chance(double Fraction);
