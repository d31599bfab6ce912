namespace GddWatch.Agronomy.Soil;

/// <summary>Where the soil of <see cref="LayeredTurfSoil"/> stands at a site at the end of a day.</summary>
/// <param name="Layers">Its layers, snow and water.</param>
/// <param name="Trust">Whether it is worth giving.</param>
/// <param name="Year">What the latitude says of each day of the year.</param>
internal sealed record TurfSoilStand(TurfSoilLayers Layers, SoilTrust Trust, LatitudeDay[] Year);
