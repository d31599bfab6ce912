using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Quantities;
using GddWatch.Configuration.Scalars;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Texts;

[Description("How long ago a treatment was recorded; not met where none is recorded.")]
public sealed record SinceTreatmentText : TextGroup
{
    [Description("The id of the treatment.")]
    [Required]
    public Placed<string>? Treatment { get; init; }

    [Description("At least so many days ago.")]
    public Placed<DayCount>? AtLeast { get; init; }

    [Description("At most so many days ago.")]
    public Placed<DayCount>? AtMost { get; init; }

    [Description("At least so much heat since, such as 200 °C-days; base and method belong to it.")]
    public Placed<DegreeDays>? Heat { get; init; }

    [Description("The base temperature of that heat.")]
    public Placed<Temperature>? Base { get; init; }

    [Description("How a day's heat is reckoned.")]
    public Placed<DegreeDayMethod>? Method { get; init; }

    [Description("A record older than this counts no more; 200 days where nothing is said.")]
    public Placed<DayCount>? Within { get; init; }
}
