using System.ComponentModel;
using GddWatch.Configuration.Scalars;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Texts;

[Description("When a heads-up is sent before the window opens, to those who ask for heads-up.")]
public sealed record HeadsUpText : TextGroup
{
    [Description("Within how many days it must be likely to open, such as 14 days; that where nothing is said.")]
    public Placed<DayCount>? Within { get; init; }

    [Description("How likely, such as 60 %; that where nothing is said.")]
    public Placed<Chance>? Chance { get; init; }

    [Description("It is told again when the day of an even chance has moved by so many days, such as 7 days; that where nothing is said.")]
    public Placed<DayCount>? AgainWhenMoved { get; init; }
}
