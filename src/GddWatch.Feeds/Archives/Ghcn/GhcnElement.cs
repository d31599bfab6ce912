namespace GddWatch.Feeds.Archives.Ghcn;

/// <summary>The elements of GHCN-Daily that are used.</summary>
internal enum GhcnElement
{
    /// <summary>TMAX.</summary>
    Maximum,

    /// <summary>TMIN.</summary>
    Minimum,

    /// <summary>TAVG.</summary>
    Average,

    /// <summary>PRCP.</summary>
    Precipitation,

    /// <summary>SNWD.</summary>
    SnowDepth,
}
