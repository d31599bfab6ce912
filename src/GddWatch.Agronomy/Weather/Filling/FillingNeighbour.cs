namespace GddWatch.Agronomy.Weather.Filling;

/// <summary>A site near by whose weather may stand in.</summary>
/// <param name="Name">As people call it.</param>
/// <param name="Series">Its own weather.</param>
/// <param name="IsSameSite">Whether it is another feed of the very site, which is asked first.</param>
public sealed record FillingNeighbour(string Name, DailySeries Series, bool IsSameSite = false);
