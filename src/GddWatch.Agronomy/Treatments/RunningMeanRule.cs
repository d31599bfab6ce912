using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments.Conditions;

namespace GddWatch.Agronomy.Treatments;

/// <summary>A rule of thumb: the first day of the season on which the mean of the daily mean air temperature over the last days has passed a value.</summary>
/// <param name="MeanOverDays">Over how many days is averaged, the day itself included [days].</param>
/// <param name="Passing">From which side.</param>
/// <param name="Threshold">The value; at it counts as past it.</param>
public sealed record RunningMeanRule(int MeanOverDays, Passing Passing, Temperature Threshold)
{
    /// <summary>The rule that an opening suggests: the first soil temperature in it, with the air in the soil's place; null where it looks at no soil temperature.</summary>
    public static RunningMeanRule? SuggestedBy(Condition opens)
    {
        ArgumentNullException.ThrowIfNull(opens);
        return opens.AndItsParts().OfType<SoilTemperatureCondition>().FirstOrDefault() is { } soil ? new RunningMeanRule(soil.MeanOverDays, soil.Passing, soil.Threshold) : null;
    }

    /// <summary>The rule in words.</summary>
    public string InWords(ReadersUnits units) =>
        $"the {MeanOverDays}-day mean of the daily mean of the air is at or {(Passing == Passing.RisesAbove ? "above" : "below")} {Wording.Temperature(Threshold, units)} for the first time in the season";
}
