namespace GddWatch.Agronomy.Places;

/// <summary>The two families of lawn grass, which grow at different warmth.</summary>
public enum TurfType
{
    /// <summary>Such as tall fescue, Kentucky bluegrass, perennial ryegrass.</summary>
    CoolSeason,

    /// <summary>Such as bermudagrass, zoysiagrass, centipedegrass.</summary>
    WarmSeason,
}
