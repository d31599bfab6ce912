namespace GddWatch.Configuration.Scalars;

/// <summary>A share of something, 0 or more; 1 is all of it.</summary>
public readonly record struct Share(double Fraction);
