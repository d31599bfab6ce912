using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Configuration.Scalars;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Texts;

[Description("The growth potential is at least, or at most, a value.")]
public sealed record GrowthPotentialText : TextGroup
{
    [Description("Whose growth: cool-season or warm-season.")]
    [Required]
    public Placed<TurfType>? Turf { get; init; }

    [Description("Over how many days is averaged, such as 14 days.")]
    [Required]
    public Placed<DayCount>? MeanOver { get; init; }

    [Description("Met at or above this share of the best growth there is, such as 50 %.")]
    public Placed<Share>? AtLeast { get; init; }

    [Description("Met at or below this share.")]
    public Placed<Share>? AtMost { get; init; }

    [Description("Whether the share is one of the site's usual yearly peak rather than of the best growth there is.")]
    public Placed<bool>? OfUsualPeak { get; init; }

    [Description("The usual yearly peak where the site has fewer than ten earlier years, such as 80 %; unknown without it.")]
    public Placed<Share>? FallbackPeak { get; init; }

    [Description("Which way growth must go: rising, rising or flat, or falling.")]
    public Placed<GrowthDirection>? Direction { get; init; }

    [Description("On how many of the last days it must be so: 3 of 5 days, or 3 days for days in a row; 1 day where nothing is said.")]
    public Placed<Holding>? Held { get; init; }

    [Description("Once met it stays met until the share has gone back past this one.")]
    public Placed<Share>? LetsGoAt { get; init; }
}
