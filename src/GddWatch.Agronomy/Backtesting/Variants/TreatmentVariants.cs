using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Treatments.Conditions;

namespace GddWatch.Agronomy.Backtesting.Variants;

/// <summary>Makes variants of a treatment: the same but for one or several parts of what opens it.</summary>
public static class TreatmentVariants
{
    /// <summary>The treatment with its opening varied; closings and guards stay as they are.</summary>
    /// <returns>The variant; null where the opening has no such part, or the value makes no sense there, such as a base above the sum's upper threshold.</returns>
    public static Treatment? With(Treatment treatment, IReadOnlyList<Variation> variations)
    {
        ArgumentNullException.ThrowIfNull(treatment);
        ArgumentNullException.ThrowIfNull(variations);
        Condition opens = treatment.Opens;
        foreach (Variation variation in variations)
        {
            if (FirstWith(opens, variation.Part) is not { } old || Varied(old, variation) is not { } varied) return null;
            opens = Replaced(opens, old, varied);
        }

        return treatment with { Opens = opens };
    }

    /// <summary>The value that a part has now, in the part's metric unit; null where the opening has no such part.</summary>
    public static double? InUse(Treatment treatment, VariedPart part)
    {
        ArgumentNullException.ThrowIfNull(treatment);
        return FirstWith(treatment.Opens, part) switch
        {
            null => null,
            SoilTemperatureCondition soil when part == VariedPart.SoilThreshold => soil.Threshold.Celsius,
            SoilTemperatureCondition soil when part == VariedPart.AveragingDays => soil.MeanOverDays,
            SoilTemperatureCondition soil => soil.Depth.Centimetres,
            AirTemperatureCondition air when part == VariedPart.AirThreshold => (air.Above ?? air.Below)!.Value.Celsius,
            AirTemperatureCondition air => air.MeanOverDays,
            GrowthPotentialCondition growth => growth.MeanOverDays,
            HeatSumCondition heat when part == VariedPart.Heat => heat.Reaches.CelsiusDays,
            HeatSumCondition heat when part == VariedPart.BaseTemperature => heat.Sum.Base.Celsius,
            HeatSumCondition heat => heat.Sum.SoilDepth!.Value.Centimetres,
            _ => null,
        };
    }

    /// <summary>
    /// The heat that a sum must reach and that stays while its base is another; null where the base is not varied, or the heat is varied along with it. Strictly a threshold belongs to its base
    /// (Yang, Logan and Coffey 1995), so that whoever is shown such a variant should be told.
    /// </summary>
    public static DegreeDays? HeatThatStays(Treatment treatment, IReadOnlyList<Variation> variations)
    {
        ArgumentNullException.ThrowIfNull(treatment);
        ArgumentNullException.ThrowIfNull(variations);
        return variations.Any(each => each.Part == VariedPart.BaseTemperature) && variations.All(each => each.Part != VariedPart.Heat) && InUse(treatment, VariedPart.Heat) is { } heat
            ? DegreeDays.FromCelsiusDays(heat)
            : null;
    }

    /// <summary>The threshold that an opening goes by first: of soil, heat or air; null where it has none of them.</summary>
    public static VariedPart? LeadingThreshold(Treatment treatment)
    {
        ArgumentNullException.ThrowIfNull(treatment);
        foreach (Condition condition in treatment.Opens.AndItsParts())
        {
            switch (condition)
            {
                case SoilTemperatureCondition: return VariedPart.SoilThreshold;
                case HeatSumCondition: return VariedPart.Heat;
                case AirTemperatureCondition air when Has(air, VariedPart.AirThreshold): return VariedPart.AirThreshold;
                default: continue;
            }
        }

        return null;
    }

    private static Condition? FirstWith(Condition opens, VariedPart part) => opens.AndItsParts().FirstOrDefault(condition => Has(condition, part));

    private static bool Has(Condition condition, VariedPart part) => (condition, part) switch
    {
        (SoilTemperatureCondition, VariedPart.SoilThreshold or VariedPart.AveragingDays or VariedPart.SoilDepth) => true,
        (AirTemperatureCondition { NextDays: null }, VariedPart.AveragingDays) => true,
        // A band has two ends, and nobody says which of them is meant.
        (AirTemperatureCondition { NextDays: null } air, VariedPart.AirThreshold) => air.Above is null != air.Below is null,
        (GrowthPotentialCondition, VariedPart.AveragingDays) => true,
        (HeatSumCondition, VariedPart.Heat or VariedPart.BaseTemperature) => true,
        (HeatSumCondition heat, VariedPart.SoilDepth) => heat.Sum.SoilDepth is not null,
        _ => false,
    };

    private static Condition? Varied(Condition condition, Variation variation)
    {
        double value = variation.Value;
        switch (condition, variation.Part)
        {
            case (SoilTemperatureCondition soil, VariedPart.SoilThreshold):
                // What lets go late moves along with the threshold, so that the slack between the two stays.
                return soil with { Threshold = Temperature.FromCelsius(value), LetsGoAt = soil.LetsGoAt is { } back ? Temperature.FromCelsius(back.Celsius + value - soil.Threshold.Celsius) : null };
            case (SoilTemperatureCondition soil, VariedPart.AveragingDays):
                return value < 1 ? null : soil with { MeanOverDays = (int)value };
            case (SoilTemperatureCondition soil, VariedPart.SoilDepth):
                return value <= 0 ? null : soil with { Depth = Depth.FromCentimetres(value) };
            case (AirTemperatureCondition air, VariedPart.AirThreshold):
                return air.Above is not null ? air with { Above = Temperature.FromCelsius(value) } : air with { Below = Temperature.FromCelsius(value) };
            case (AirTemperatureCondition air, VariedPart.AveragingDays):
                return value < 1 ? null : air with { MeanOverDays = (int)value };
            case (GrowthPotentialCondition growth, VariedPart.AveragingDays):
                return value < 1 ? null : growth with { MeanOverDays = (int)value };
            case (HeatSumCondition heat, VariedPart.Heat):
                return value <= 0 ? null : heat with { Reaches = DegreeDays.FromCelsiusDays(value) };
            case (HeatSumCondition heat, VariedPart.BaseTemperature):
                return heat.Sum.Upper is { } upper && upper.Celsius <= value ? null : heat with { Sum = heat.Sum with { Base = Temperature.FromCelsius(value) } };
            case (HeatSumCondition heat, VariedPart.SoilDepth):
                return value <= 0 ? null : heat with { Sum = heat.Sum with { SoilDepth = Depth.FromCentimetres(value) } };
            default:
                return null;
        }
    }

    private static Condition Replaced(Condition condition, Condition old, Condition varied) => condition switch
    {
        _ when ReferenceEquals(condition, old) => varied,
        AllOf all => new AllOf([.. all.Parts.Select(part => Replaced(part, old, varied))]),
        AnyOf any => new AnyOf([.. any.Parts.Select(part => Replaced(part, old, varied))]),
        Not not => new Not(Replaced(not.Part, old, varied)),
        _ => condition,
    };
}
