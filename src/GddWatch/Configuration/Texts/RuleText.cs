using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Texts;

[Description("A local law that bans a kind of work for part of the year.")]
public sealed record RuleText : TextGroup
{
    [Description("The kind of work that is banned: feeding, watering, weed-control, insect-control, seeding, mowing or soil-work.")]
    [Required]
    public Placed<WorkKind>? Kind { get; init; }

    [Description("The first day of the ban.")]
    [Required]
    public Placed<AnnualDay>? From { get; init; }

    [Description("The last day of the ban, included.")]
    [Required]
    public Placed<AnnualDay>? Until { get; init; }

    [Description("all, or a list of the site ids that it binds.")]
    [Required]
    public AllOrSome? Sites { get; init; }

    [Description("Where the rule is written.")]
    [Required]
    public Placed<string>? Source { get; init; }

    [Description("The day on which somebody last checked it.")]
    [Required]
    public Placed<DateOnly>? Reviewed { get; init; }
}
