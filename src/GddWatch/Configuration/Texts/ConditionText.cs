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

    [Description("So many days or more have passed since the usual last freeze.")]
    public LastFreezeText? DaysAfterLastFreeze { get; init; }

    [Description("An air temperature lies in a band.")]
    public AirTemperatureText? AirTemperature { get; init; }

    [Description("The growth potential is at least, or at most, a value.")]
    public GrowthPotentialText? GrowthPotential { get; init; }

    [Description("So many days are left until growth usually falls.")]
    public GrowthFallsText? DaysBeforeGrowthFalls { get; init; }

    [Description("There was, or is to come, so much rain.")]
    public RainText? Rain { get; init; }

    [Description("So much water is missing from the root zone.")]
    public RootZoneText? RootZoneDepletion { get; init; }

    [Description("A treatment was recorded so long ago.")]
    public SinceTreatmentText? SinceTreatment { get; init; }
}
