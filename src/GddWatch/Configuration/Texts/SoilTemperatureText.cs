using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Configuration.Scalars;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Texts;

[Description("The mean soil temperature of the last days is past a threshold: rises-above or falls-below.")]
public sealed record SoilTemperatureText : TextGroup
{
    [Description("The depth, such as 5 cm or 2 in.")]
    [Required]
    public Placed<Depth>? Depth { get; init; }

    [Description("Over how many days is averaged, such as 5 days.")]
    [Required]
    public Placed<DayCount>? MeanOver { get; init; }

    [Description("Met at or above this temperature.")]
    public Placed<Temperature>? RisesAbove { get; init; }

    [Description("Met at or below this temperature.")]
    public Placed<Temperature>? FallsBelow { get; init; }

    [Description("On how many of the last days it must be so: 3 of 5 days, or 3 days for days in a row.")]
    [Required]
    public Placed<Holding>? Held { get; init; }

    [Description("Once met it stays met until the mean has gone back past this temperature.")]
    public Placed<Temperature>? LetsGoAt { get; init; }

    [Description("What holds where the soil is past the threshold when the season starts.")]
    public WhereAlreadySoText? WhereAlreadySo { get; init; }
}
