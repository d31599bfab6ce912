using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using GddWatch.Agronomy.Quantities;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Texts;

[Description("A part of each year, written for the northern hemisphere.")]
public sealed record SeasonText : TextGroup
{
    [Description("The first day.")]
    [Required]
    public Placed<AnnualDay>? From { get; init; }

    [Description("The last day, included; before the first where the season crosses the turn of the year.")]
    [Required]
    public Placed<AnnualDay>? Until { get; init; }
}
