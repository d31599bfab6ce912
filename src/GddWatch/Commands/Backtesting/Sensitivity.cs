using GddWatch.Agronomy.Backtesting.Variants;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;

namespace GddWatch.Commands.Backtesting;

/// <summary>What a report varies by itself: the threshold that each opening goes by first, two steps down and two up.</summary>
internal static class Sensitivity
{
    private const double HeatStep = 0.1;

    /// <summary>Steps of 2 °F or 1 °C for temperatures, of a tenth for heat; the value as it is stands in the middle.</summary>
    public static IReadOnlyList<(Treatment Variant, IReadOnlyList<Variation> Variations)> Of(IReadOnlyList<Treatment> treatments, ReadersUnits units)
    {
        var variants = new List<(Treatment, IReadOnlyList<Variation>)>();
        foreach (Treatment treatment in treatments)
        {
            if (TreatmentVariants.LeadingThreshold(treatment) is not { } part || TreatmentVariants.InUse(treatment, part) is not { } inUse) continue;
            double step = part == VariedPart.Heat ? HeatStep * inUse : units == ReadersUnits.UnitedStates ? 2 / 1.8 : 1;
            for (int steps = -2; steps <= 2; steps++)
            {
                Variation[] variation = [new(part, inUse + steps * step)];
                if (TreatmentVariants.With(treatment, variation) is { } variant) variants.Add((variant, variation));
            }
        }

        return variants;
    }
}
