using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using GddWatch.Agronomy.Quantities;
using GddWatch.Configuration.Scalars;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Texts;

[Description("What the air must do before heat counts.")]
public sealed record BiofixText : TextGroup
{
    [Description("Over how many days the mean of the air is taken.")]
    [Required]
    public Placed<DayCount>? MeanOver { get; init; }

    [Description("Heat counts from the first day on which that mean is at or above this.")]
    [Required]
    public Placed<Temperature>? AtLeast { get; init; }
}
