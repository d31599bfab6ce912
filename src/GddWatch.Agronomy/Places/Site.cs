namespace GddWatch.Agronomy.Places;

/// <summary>A place with one weather history.</summary>
public sealed record Site
{
    /// <summary>Short plain name for commands and keys.</summary>
    public required string Id { get; init; }

    /// <summary>The name that people read.</summary>
    public required string Name { get; init; }

    /// <summary>Latitude [°], north positive, −90 to 90.</summary>
    public required double Latitude { get; init; }

    /// <summary>Longitude [°], east positive, −180 to 180.</summary>
    public required double Longitude { get; init; }

    /// <summary>Height above the sea [m].</summary>
    public required double ElevationM { get; init; }

    /// <summary>IANA name of the time zone in which the site's days are counted.</summary>
    public required string TimeZone { get; init; }

    /// <summary>The turf that grows here, one or both.</summary>
    public required IReadOnlyList<TurfType> Turf { get; init; }

    /// <summary>The grass species, where known; advice bound to a species stays silent without it.</summary>
    public IReadOnlyList<string> Grass { get; init; } = [];

    /// <summary>The texture of the soil, where known.</summary>
    public SoilTexture? Soil { get; init; }

    /// <summary>What has been a problem here, such as "grubs".</summary>
    public IReadOnlyList<string> History { get; init; } = [];

    /// <summary>The ids of treatments that are preferred here over those which they and these forbid each other.</summary>
    public IReadOnlyList<string> Prefers { get; init; } = [];

    /// <summary>Whether the soil temperature is estimated from the air or measured here.</summary>
    public SoilSource SoilTemperature { get; init; } = SoilSource.Estimated;

    /// <summary>The half of the earth it lies on.</summary>
    public Hemisphere Hemisphere => Latitude < 0 ? Hemisphere.Southern : Hemisphere.Northern;
}
