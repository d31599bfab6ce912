using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Texts;

[Description("Something that is so, or not so, on a day: exactly one of these keys.")]
public sealed record ConditionText : TextGroup
{
    [Description("All of these conditions.")]
    public PlacedList<ConditionText>? All { get; init; }

    [Description("At least one of these conditions.")]
    public PlacedList<ConditionText>? Any { get; init; }

    [Description("The condition turned round.")]
    public ConditionText? Not { get; init; }

    [Description("The soil temperature passes a threshold.")]
    public SoilTemperatureText? SoilTemperature { get; init; }

    [Description("A heat sum reaches a threshold.")]
    public HeatSumText? HeatSum { get; init; }

    [Description("The date is not before, or not after, a day of the year; a guard beside other conditions.")]
    public CalendarText? Calendar { get; init; }

    [Description("So many days or fewer are left before the usual first freeze.")]
    public FirstFreezeText? DaysBeforeFirstFreeze { get; init; }
}
