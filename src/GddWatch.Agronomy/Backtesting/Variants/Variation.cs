using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;

namespace GddWatch.Agronomy.Backtesting.Variants;

/// <summary>One part of an opening set to another value.</summary>
/// <param name="Part">The part.</param>
/// <param name="Value">The value, in the part's metric unit.</param>
public sealed record Variation(VariedPart Part, double Value)
{
    /// <summary>The part in words, such as "soil threshold".</summary>
    public string PartInWords => Part switch
    {
        VariedPart.SoilThreshold => "soil threshold",
        VariedPart.AirThreshold => "air threshold",
        VariedPart.Heat => "heat",
        VariedPart.BaseTemperature => "base",
        VariedPart.AveragingDays => "mean-over",
        _ => "depth",
    };

    /// <summary>The value with its unit, such as "49 °F".</summary>
    public string ValueInWords(ReadersUnits units) => Part switch
    {
        VariedPart.SoilThreshold or VariedPart.AirThreshold or VariedPart.BaseTemperature => Wording.Temperature(Value, units),
        VariedPart.Heat => Wording.Heat(Value, units),
        VariedPart.AveragingDays => Wording.Days((int)Value),
        _ => Wording.Depth(Depth.FromCentimetres(Value), units),
    };
}
