using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using GddWatch.Agronomy.Quantities;
using GddWatch.Configuration.Scalars;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Texts;

[Description("What holds where the soil is past the threshold when the season starts: it counts, but not too long before a usual date.")]
public sealed record WhereAlreadySoText : TextGroup
{
    [Description("How long before the usual date it counts at the earliest.")]
    [Required]
    public Placed<DayCount>? DaysBeforeUsual { get; init; }

    [Description("The soil temperature whose usual date is meant.")]
    [Required]
    public Placed<Temperature>? Usual { get; init; }

    [Description("The usual date where the site has fewer than ten earlier seasons, written for the north.")]
    [Required]
    public Placed<AnnualDay>? Fallback { get; init; }

    [Description("A passage within so many days of the season's start counts as already so.")]
    [Required]
    public Placed<DayCount>? Within { get; init; }
}
