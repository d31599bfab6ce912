using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Configuration.Scalars;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Texts;

[Description("How long growth usually lasts yet.")]
public sealed record GrowthFallsText : TextGroup
{
    [Description("Whose growth: cool-season or warm-season.")]
    [Required]
    public Placed<TurfType>? Turf { get; init; }

    [Description("The share of the usual yearly peak under which growth falls, such as 50 %.")]
    [Required]
    public Placed<Share>? Under { get; init; }

    [Description("Met while at least so many days are left.")]
    public Placed<DayCount>? AtLeast { get; init; }

    [Description("Met from so many days before it on, and while growth is usually under it.")]
    public Placed<DayCount>? AtMost { get; init; }

    [Description("The usual date where the site has fewer than ten earlier years, written for the north; unknown without it.")]
    public Placed<AnnualDay>? Fallback { get; init; }
}
