using GddWatch.Agronomy.Backtesting.Variants;
using GddWatch.Agronomy.Quantities;
using GddWatch.Configuration.Scalars;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Commands.Backtesting;

/// <summary>Reads what is to be varied, such as "soil threshold: 46 °F to 52 °F by 1 °F" or "mean-over: 3 days, 5 days, 7 days".</summary>
internal static class WhatIfText
{
    /// <summary>What <c>--what-if</c> takes.</summary>
    public const string Accepted =
        "\"PART: VALUE, VALUE ...\" or \"PART: VALUE to VALUE by STEP\", each value with its unit, such as \"soil threshold: 46 °F to 52 °F by 2 °F\"; parts: soil threshold, air threshold, heat, base, mean-over, depth; several together are tried in every combination";

    /// <summary>The most combinations that are tried in one go.</summary>
    public const int MostCombinations = 200;

    private const int MostValues = 50;

    private static readonly OrderedDictionary<string, VariedPart> Parts = new()
    {
        ["soil threshold"] = VariedPart.SoilThreshold,
        ["air threshold"] = VariedPart.AirThreshold,
        ["heat"] = VariedPart.Heat,
        ["base"] = VariedPart.BaseTemperature,
        ["mean-over"] = VariedPart.AveragingDays,
        ["depth"] = VariedPart.SoilDepth,
    };

    /// <summary>The values of one part; null, with what is wrong, where the text is not one.</summary>
    public static IReadOnlyList<Variation>? Parse(string text, out string problem)
    {
        int colon = text.IndexOf(':', StringComparison.Ordinal);
        string name = (colon < 0 ? text : text[..colon]).Trim().ToLowerInvariant();
        if (colon < 0 || !Parts.TryGetValue(name, out VariedPart part))
        {
            problem = $"\"{name}\" is no part of an opening that can be varied: {NearestWord.Hint(name, Parts.Keys)}.";
            return null;
        }

        string values = text[(colon + 1)..];
        int to = values.IndexOf(" to ", StringComparison.Ordinal), by = values.IndexOf(" by ", StringComparison.Ordinal);
        IReadOnlyList<double>? read = to > 0 && by > to
            ? Range(part, values[..to], values[(to + 4)..by], values[(by + 4)..], out problem)
            : List(part, values, out problem);
        return read is null ? null : [.. read.Select(value => new Variation(part, value))];
    }

    /// <summary>Every combination of the values of several parts.</summary>
    public static IReadOnlyList<IReadOnlyList<Variation>> Combinations(IReadOnlyList<IReadOnlyList<Variation>> parts)
    {
        IEnumerable<IReadOnlyList<Variation>> combined = [[]];
        foreach (IReadOnlyList<Variation> part in parts) combined = [.. combined.SelectMany(before => part.Select(value => (IReadOnlyList<Variation>)[.. before, value]))];
        return [.. combined];
    }

    private static double[]? List(VariedPart part, string text, out string problem)
    {
        problem = "";
        var values = new List<double>();
        foreach (string word in text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            if (Value(part, word) is not { } value)
            {
                problem = $"\"{word}\" is not a value of it; a number with its unit is, such as {Example(part)}.";
                return null;
            }

            values.Add(value);
        }

        if (values.Count is > 0 and <= MostValues) return [.. values];
        problem = values.Count == 0 ? "No value stands behind the colon." : $"There are more than {MostValues} values.";
        return null;
    }

    private static double[]? Range(VariedPart part, string first, string last, string step, out string problem)
    {
        problem = "";
        if (Value(part, first) is not { } from || Value(part, last) is not { } until || Step(part, step) is not { } by)
        {
            problem = $"\"{first.Trim()} to {last.Trim()} by {step.Trim()}\" is not a range of it; one is such as {Example(part)} to {Example(part)} by a step in the same unit.";
            return null;
        }

        int steps = (int)Math.Floor((until - from) / by + 1e-6);
        if (steps is >= 0 and < MostValues) return [.. Enumerable.Range(0, steps + 1).Select(i => from + i * by)];
        problem = steps < 0 ? "The range ends before it begins." : $"The range has more than {MostValues} values.";
        return null;
    }

    private static double? Value(VariedPart part, string text) => part switch
    {
        VariedPart.Heat => UnitText.Heat(text.Trim()).Value is DegreeDays heat ? heat.CelsiusDays : null,
        VariedPart.AveragingDays => UnitText.Days(text.Trim()).Value is DayCount days ? days.Days : null,
        VariedPart.SoilDepth => UnitText.Depth(text.Trim()).Value is Depth depth ? depth.Centimetres : null,
        _ => UnitText.Temperature(text.Trim()).Value is Temperature temperature ? temperature.Celsius : null,
    };

    /// <summary>A step is a difference: 2 °F are 1.1 °C, not −16.7 °C.</summary>
    private static double? Step(VariedPart part, string text) => part is VariedPart.SoilThreshold or VariedPart.AirThreshold or VariedPart.BaseTemperature
        ? UnitText.TemperatureDifference(text.Trim()).Value is TemperatureDifference difference ? difference.Celsius : null
        : Value(part, text);

    private static string Example(VariedPart part) => part switch
    {
        VariedPart.Heat => "\"300 °F-days\"",
        VariedPart.AveragingDays => "\"5 days\"",
        VariedPart.SoilDepth => "\"5 cm\"",
        _ => "\"49 °F\"",
    };
}
