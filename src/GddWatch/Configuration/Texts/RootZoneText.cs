using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using GddWatch.Agronomy.Places;
using GddWatch.Configuration.Scalars;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Texts;

[Description("How much water is missing from the root zone.")]
public sealed record RootZoneText : TextGroup
{
    [Description("Whose roots: cool-season or warm-season.")]
    [Required]
    public Placed<TurfType>? Turf { get; init; }

    [Description("Met where at least so much is missing: a share of what may be missing, of which 100 % is where watering is due, or a depth of water such as 15 mm.")]
    public Placed<MissingWater>? AtLeast { get; init; }

    [Description("Met where at most so much is missing: a share or a depth of water.")]
    public Placed<MissingWater>? AtMost { get; init; }
}
