namespace GddWatch.Agronomy.Weather.Filling;

/// <summary>The ways to fill a hole, from the one taken first to the last one left.</summary>
public enum FillingRung
{
    /// <summary>Another feed of the same site, corrected for its usual difference, where the reading that was taken is doubted. A day that only the other feed has counts as measured.</summary>
    SecondFeed,

    /// <summary>A site near by, corrected for its usual difference: <see cref="Filling.NeighbouringSite"/>.</summary>
    NeighbouringSite,

    /// <summary>What was forecast for the day: <see cref="ForecastAsIssued"/>.</summary>
    Forecast,

    /// <summary>A straight line between the known days on both sides: <see cref="Filling.BetweenNeighbours"/>.</summary>
    BetweenNeighbours,

    /// <summary>What is usual at the site, with what is left of the last known departure from it: <see cref="SiteClimatology"/>.</summary>
    Climatology,

    /// <summary>The last known day again, where too few years are known: <see cref="Filling.LastKnownDay"/>.</summary>
    LastKnownDay,
}
