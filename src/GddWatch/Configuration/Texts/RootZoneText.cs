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

    [Description("Met where at least this share of what may be missing is missing; 100 % is where watering is due.")]
    public Placed<Share>? AtLeast { get; init; }

    [Description("Met where at most this share of what may be missing is missing.")]
    public Placed<Share>? AtMost { get; init; }
}
