using GddWatch.Agronomy.Quantities;

namespace GddWatch.Configuration.Scalars;

/// <summary>How much water is missing: as a share of what may be missing, or as a depth; one of the two.</summary>
/// <param name="ShareOfAllowed">The share, 0 or more; 1 is all of it.</param>
/// <param name="Depth">The depth.</param>
public readonly record struct MissingWater(double? ShareOfAllowed, WaterDepth? Depth);
