namespace GddWatch.Configuration.Scalars;

/// <summary>A height above the sea [m].</summary>
public readonly record struct Elevation(double Metres);
