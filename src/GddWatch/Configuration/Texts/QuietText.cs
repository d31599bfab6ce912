using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Texts;

[Description("The time of day in which a person wants no mail, by that person's clock.")]
public sealed record QuietText : TextGroup
{
    [Description("When it begins, such as \"21:00\".")]
    [Required]
    public Placed<TimeOnly>? From { get; init; }

    [Description("When it ends, such as \"07:00\"; before the beginning where it crosses midnight.")]
    [Required]
    public Placed<TimeOnly>? Until { get; init; }
}
