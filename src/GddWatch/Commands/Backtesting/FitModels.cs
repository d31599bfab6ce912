using GddWatch.Agronomy.Backtesting.Fitting;
using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Treatments.Conditions;

namespace GddWatch.Commands.Backtesting;

/// <summary>The models that are fitted.</summary>
internal static class FitModels
{
    /// <summary>What <c>--model</c> takes.</summary>
    public static IReadOnlyList<string> Names { get; } = ["heat-sum", "air", "soil"];

    /// <summary>The model of a treatment's own opening: the first heat sum, soil or air temperature in it; null where it has none.</summary>
    public static DateModel? OfOpening(Treatment treatment)
    {
        foreach (Condition condition in treatment.Opens.AndItsParts())
        {
            switch (condition)
            {
                case HeatSumCondition heat: return new HeatSumModel(heat.Sum);
                case SoilTemperatureCondition soil: return new RunningMeanModel(soil.Depth, AirValue.Mean, soil.Passing, soil.Holding);
                case AirTemperatureCondition { NextDays: null } air when air.Above is null != air.Below is null:
                    return new RunningMeanModel(null, air.Of, air.Above is null ? Passing.FallsBelow : Passing.RisesAbove, air.Holding);
                default: continue;
            }
        }

        return null;
    }

    /// <summary>A model by its name; a falling one where a temperature is waited for that falls.</summary>
    public static DateModel Named(string name, HeatSumDefinition sum, Depth depth, bool falls)
    {
        Passing passing = falls ? Passing.FallsBelow : Passing.RisesAbove;
        return name switch
        {
            "heat-sum" => new HeatSumModel(sum),
            "air" => new RunningMeanModel(null, AirValue.Mean, passing, new Holding(1, 1)),
            _ => new RunningMeanModel(depth, AirValue.Mean, passing, new Holding(1, 1)),
        };
    }

    /// <summary>The model in words, such as "Heat sum of the air, single sine, from 1 January".</summary>
    public static string InWords(DateModel model, ReadersUnits units) => model switch
    {
        HeatSumModel { Sum: var sum } =>
            $"Heat sum {(sum.SoilDepth is { } depth ? $"of the soil at {Wording.Depth(depth, units)}" : "of the air")}, {DegreeDayWords.Of(sum.Method)}{(sum.Upper is { } upper ? $", upper {Wording.Temperature(upper, units)} {DegreeDayWords.Of(sum.Cutoff)}" : "")}, from {Wording.AnnualDay(sum.Start)}{(sum.Biofix is { } biofix ? $" once the {biofix.MeanDays}-day mean is at {Wording.Temperature(biofix.Passes, units)}" : "")}",
        RunningMeanModel { SoilDepth: { } at } mean => $"Running mean of the soil at {Wording.Depth(at, units)} that {(mean.Falls ? "falls" : "rises")} to a threshold, {mean.Holding.InWords()}",
        RunningMeanModel mean => $"Running mean of the daily {mean.Air.ToString().ToLowerInvariant()} of the air that {(mean.Falls ? "falls" : "rises")} to a threshold, {mean.Holding.InWords()}",
        _ => throw new ArgumentException("There are no words for this model.", nameof(model)),
    };

    /// <summary>The second constant in words, such as "base 41 °F" or "7 days".</summary>
    public static string GridInWords(DateModel model, double value, ReadersUnits units) => model.IsHeatSum ? Wording.Temperature(value, units) : Wording.Days((int)value);

    /// <summary>The threshold in words.</summary>
    public static string ThresholdInWords(DateModel model, double value, ReadersUnits units) => model.IsHeatSum ? Wording.Heat(value, units) : Wording.Temperature(value, units);

    /// <summary>A criterion in words.</summary>
    public static string InWords(FitCriterion criterion) => criterion switch
    {
        FitCriterion.LeastErrorInDays => "least error in days",
        FitCriterion.LeastCoefficientOfVariation => "least coefficient of variation",
        FitCriterion.LeastDeviationInHeat => "least deviation in heat",
        FitCriterion.LeastDeviationInDays => "least deviation in days",
        _ => "no slope on temperature",
    };
}
