using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Configuration.Scalars;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Texts;

[Description("An air temperature lies in a band: above, below or both.")]
public sealed record AirTemperatureText : TextGroup
{
    [Description("Which of a day's temperatures: minimum, maximum or mean.")]
    [Required]
    public Placed<AirValue>? Of { get; init; }

    [Description("Over how many days is averaged; 1 day where nothing is said.")]
    public Placed<DayCount>? MeanOver { get; init; }

    [Description("Met at or above this temperature.")]
    public Placed<Temperature>? Above { get; init; }

    [Description("Met at or below this temperature.")]
    public Placed<Temperature>? Below { get; init; }

    [Description("On how many of the last days it must be so: 3 of 5 days, or 3 days for days in a row; 1 day where nothing is said.")]
    public Placed<Holding>? Held { get; init; }

    [Description("Once met it stays met until the temperature is further than this outside, such as 2 °F.")]
    public Placed<TemperatureDifference>? LetsGoBy { get; init; }

    [Description("By the forecast on each of so many days to come, in place of the days past.")]
    public Placed<DayCount>? Next { get; init; }
}
