using System.ComponentModel;
using GddWatch.Agronomy.Quantities;
using GddWatch.Configuration.Scalars;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Texts;

[Description("The rain of the last days, or that forecast for the next: in-last or in-next.")]
public sealed record RainText : TextGroup
{
    [Description("Over how many last days, today included.")]
    public Placed<DayCount>? InLast { get; init; }

    [Description("Over how many days to come, by the forecast.")]
    public Placed<DayCount>? InNext { get; init; }

    [Description("Met with at least so much rain, such as 10 mm or 0.4 in.")]
    public Placed<WaterDepth>? AtLeast { get; init; }

    [Description("Met with at most so much rain.")]
    public Placed<WaterDepth>? AtMost { get; init; }
}
