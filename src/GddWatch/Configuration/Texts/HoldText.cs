using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using GddWatch.Configuration.Scalars;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Texts;

[Description("How long a treatment is held once another is recorded: until whichever comes first of what is given.")]
public sealed record HoldText : TextGroup
{
    [Description("The longest usual interval, such as 365 days, after which it is free in any case.")]
    [Required]
    public Placed<DayCount>? Longest { get; init; }

    [Description("Whether the date from the product's label, where the record has one (--no-seed-until), stands in for the longest interval.")]
    public Placed<bool>? LabelDateDecides { get; init; }

    [Description("After how many mowings recorded since it is free, such as 3.")]
    public Placed<double>? Mowings { get; init; }
}
