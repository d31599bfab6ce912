using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Quantities;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Texts;

[Description("A heat sum and the threshold that belongs to it.")]
public sealed record HeatSumText : TextGroup
{
    [Description("The threshold, such as 350 °F-days.")]
    [Required]
    public Placed<DegreeDays>? Reaches { get; init; }

    [Description("The base temperature, below which nothing develops.")]
    [Required]
    public Placed<Temperature>? Base { get; init; }

    [Description("How a day's heat is reckoned; a threshold means nothing without its method.")]
    [Required]
    public Placed<DegreeDayMethod>? Method { get; init; }

    [Description("The day on which the sum starts from zero each year (the biofix), written for the north.")]
    [Required]
    public Placed<AnnualDay>? From { get; init; }

    [Description("The upper threshold, where there is one.")]
    public Placed<Temperature>? Upper { get; init; }

    [Description("What happens above the upper threshold; needed where there is one.")]
    public Placed<DegreeDayCutoff>? Cutoff { get; init; }

    [Description("The depth of the soil whose daily mean is summed; the air is summed without it.")]
    public Placed<Depth>? SoilDepth { get; init; }

    [Description("What the air must do after that day before heat counts; heat counts from that day without it.")]
    public BiofixText? FromWhen { get; init; }
}
