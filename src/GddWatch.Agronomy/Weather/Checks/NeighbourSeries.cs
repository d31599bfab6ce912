namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>The weather of a place nearby.</summary>
/// <param name="Name">The place's name, as people call it.</param>
/// <param name="DistanceKm">How far away it is [km].</param>
/// <param name="Series">Its weather.</param>
public sealed record NeighbourSeries(string Name, double DistanceKm, DailySeries Series);
