using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using GddWatch.Agronomy.Quantities;
using GddWatch.Configuration.Scalars;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Texts;

[Description("The first day of the season on which a running mean of the daily mean air temperature has passed a value.")]
public sealed record RunningMeanText : TextGroup
{
    [Description("Over how many days is averaged, such as 7 days.")]
    [Required]
    public Placed<DayCount>? MeanOver { get; init; }

    [Description("The temperature that the mean rises to.")]
    public Placed<Temperature>? RisesAbove { get; init; }

    [Description("The temperature that the mean falls to.")]
    public Placed<Temperature>? FallsBelow { get; init; }
}
