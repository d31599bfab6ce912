using System.ComponentModel;
using GddWatch.Agronomy.Quantities;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Texts;

[Description("What past windows are compared with by backtest; judging does not look at it.")]
public sealed record CompareWithText : TextGroup
{
    [Description("The fixed date that people go by, written for the north; half a year later in the south.")]
    public Placed<AnnualDay>? Calendar { get; init; }

    [Description("Where people go by it, in a few words, such as: the middle of the cool-season zone.")]
    public Placed<string>? CalendarNote { get; init; }

    [Description("The rule of thumb on a running mean of air temperature; without it the opening's first soil temperature, with the air in the soil's place.")]
    public RunningMeanText? Air { get; init; }

    [Description("What is seen outdoors, and how long before it the window should open.")]
    public PlacedList<SeenText>? Seen { get; init; }
}
