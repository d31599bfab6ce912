using System.Globalization;
using System.Text;
using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments.Conditions;

namespace GddWatch.Commands.Backtesting;

/// <summary>A condition as it is written in treatments.yaml, for a person to put there.</summary>
internal static class FitSnippet
{
    /// <summary>The condition with its key, on one line, in the reader's units.</summary>
    /// <exception cref="ArgumentException">The condition is none that is fitted.</exception>
    public static string Of(Condition condition, ReadersUnits units) => condition switch
    {
        HeatSumCondition heat => OfHeat(heat, units),
        SoilTemperatureCondition soil =>
            $"soil-temperature: {{ depth: {soil.Depth.Centimetres.ToString("0.##", CultureInfo.InvariantCulture)} cm, mean-over: {Days(soil.MeanOverDays)}, {(soil.Passing == Passing.RisesAbove ? "rises-above" : "falls-below")}: {Warmth(soil.Threshold, units)}, held: {Held(soil.Holding)} }}",
        AirTemperatureCondition air =>
            $"air-temperature: {{ of: {air.Of.ToString().ToLowerInvariant()}, mean-over: {Days(air.MeanOverDays)}, {(air.Above is { } above ? $"above: {Warmth(above, units)}" : $"below: {Warmth(air.Below!.Value, units)}")}, held: {Held(air.Holding)} }}",
        _ => throw new ArgumentException("This condition is not fitted.", nameof(condition)),
    };

    private static string OfHeat(HeatSumCondition heat, ReadersUnits units)
    {
        HeatSumDefinition sum = heat.Sum;
        var text = new StringBuilder();
        string reaches = units == ReadersUnits.UnitedStates
            ? $"{Math.Round(heat.Reaches.CelsiusDays * 1.8).ToString(CultureInfo.InvariantCulture)} °F-days"
            : $"{Math.Round(heat.Reaches.CelsiusDays).ToString(CultureInfo.InvariantCulture)} °C-days";
        text.Append($"heat-sum: {{ reaches: {reaches}, base: {Warmth(sum.Base, units)}, method: {DegreeDayWords.Of(sum.Method)}, from: {sum.Start}");
        if (sum.Upper is { } upper) text.Append($", upper: {Warmth(upper, units)}, cutoff: {DegreeDayWords.Of(sum.Cutoff)}");
        if (sum.SoilDepth is { } depth) text.Append($", soil-depth: {depth.Centimetres.ToString("0.##", CultureInfo.InvariantCulture)} cm");
        if (sum.Biofix is { } biofix) text.Append($", from-when: {{ mean-over: {Days(biofix.MeanDays)}, at-least: {Warmth(biofix.Passes, units)} }}");
        return text.Append(" }").ToString();
    }

    private static string Warmth(Temperature temperature, ReadersUnits units)
    {
        double value = units == ReadersUnits.UnitedStates ? temperature.Fahrenheit : temperature.Celsius;
        return $"{value.ToString("0.#", CultureInfo.InvariantCulture)} {(units == ReadersUnits.UnitedStates ? "°F" : "°C")}";
    }

    private static string Days(int days) => days == 1 ? "1 day" : $"{days} days";

    private static string Held(Holding holding) => holding.Days == holding.OfDays ? Days(holding.Days) : $"{holding.Days} of {holding.OfDays} days";
}
