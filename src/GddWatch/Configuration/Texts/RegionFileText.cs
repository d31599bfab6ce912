using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Texts;

[Description("What is watched: the region, its sites, who is told, local law.")]
public sealed record RegionFileText : TextGroup
{
    [Description("The region.")]
    [Required]
    public RegionText? Region { get; init; }

    [Description("The places that are watched.")]
    [Required]
    public PlacedList<SiteText>? Sites { get; init; }

    [Description("The people who are told.")]
    [Required]
    public PlacedList<RecipientText>? Recipients { get; init; }

    [Description("Who runs the service and hears of its own troubles.")]
    [Required]
    public OperatorText? Operator { get; init; }

    [Description("Local law: a notice that would break one is not sent.")]
    public PlacedList<RuleText>? Rules { get; init; }
}
