using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using GddWatch.Agronomy.Places;
using GddWatch.Configuration.Scalars;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Texts;

[Description("A place with one weather history.")]
public sealed record SiteText : TextGroup
{
    [Description("A short plain name for commands, in lower-case letters, digits and hyphens.")]
    [Required]
    public Placed<string>? Id { get; init; }

    [Description("The name that people read.")]
    [Required]
    public Placed<string>? Name { get; init; }

    [Description("Degrees, north positive, such as 41.6.")]
    [Required]
    public Placed<double>? Latitude { get; init; }

    [Description("Degrees, east positive and west negative, such as -93.3.")]
    [Required]
    public Placed<double>? Longitude { get; init; }

    [Description("Height above the sea with its unit, such as 250 m or 820 ft.")]
    [Required]
    public Placed<Elevation>? Elevation { get; init; }

    [Description("The time zone, where it is not the region's.")]
    public Placed<string>? TimeZone { get; init; }

    [Description("The turf that grows here, as a list: cool-season, warm-season or both.")]
    [Required]
    public PlacedList<Placed<TurfType>>? Turf { get; init; }

    [Description("The grass species, where known; advice bound to a species stays silent without it.")]
    public PlacedList<Placed<string>>? Grass { get; init; }

    [Description("The texture of the soil, where known.")]
    public Placed<SoilTexture>? Soil { get; init; }

    [Description("Whether the soil temperature is estimated from the air (the default) or measured here.")]
    public Placed<SoilSource>? SoilTemperature { get; init; }

    [Description("What has been a problem here, such as grubs.")]
    public PlacedList<Placed<string>>? History { get; init; }

    [Description("Treatments that are preferred here where they and others forbid each other, such as overseeding.")]
    public PlacedList<Placed<string>>? Prefers { get; init; }

    [Description("Where the weather comes from, in order of preference.")]
    [Required]
    public PlacedList<FeedText>? Feeds { get; init; }
}
