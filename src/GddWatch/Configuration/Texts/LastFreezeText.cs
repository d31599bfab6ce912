using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using GddWatch.Agronomy.Quantities;
using GddWatch.Configuration.Scalars;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Texts;

[Description("How long ago the site's usual last freeze was.")]
public sealed record LastFreezeText : TextGroup
{
    [Description("Met from so many days after it on.")]
    [Required]
    public Placed<DayCount>? AtLeast { get; init; }

    [Description("The chance that the last freeze is past by the usual date: 50 % is the middle of the years, 90 % a safer date later on.")]
    [Required]
    public Placed<Chance>? Chance { get; init; }

    [Description("The minimum air temperature that counts as a freeze; 32 °F (0 °C) where nothing is said.")]
    public Placed<Temperature>? Freeze { get; init; }

    [Description("The usual date where the site has fewer than ten earlier seasons, written for the north; unknown without it.")]
    public Placed<AnnualDay>? Fallback { get; init; }
}
