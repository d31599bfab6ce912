using System.Globalization;
using System.Text;
using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Quantities;

namespace GddWatch.Commands;

/// <summary>A heat sum as a column of the daily table: what is summed, and the name of the column.</summary>
/// <param name="Name">The name, in °C whatever the text said.</param>
/// <param name="Asked">What a person asked for, in their own words.</param>
/// <param name="Definition">What is summed.</param>
internal sealed record HeatColumn(string Name, string Asked, HeatSumDefinition Definition)
{
    /// <summary>What <c>--heat</c> takes.</summary>
    public const string Accepted =
        "\"base T[, upper T], METHOD[, CUTOFF], from MM-DD\", such as \"base 50 °F, single sine, from 01-01\"; methods: simple average, average with limited extremes, single sine, double sine, single triangle, double triangle; cutoffs: none, horizontal, intermediate, intermediate pointwise, vertical";

    /// <summary>The column of a sum that a treatment uses.</summary>
    public static HeatColumn Of(HeatSumDefinition definition)
    {
        var parts = new List<string> { $"base {Celsius(definition.Base)}" };
        if (definition.Upper is { } upper) parts.Add($"upper {Celsius(upper)}");
        parts.Add(DegreeDayWords.Of(definition.Method));
        if (definition.Cutoff != DegreeDayCutoff.None) parts.Add(DegreeDayWords.Of(definition.Cutoff));
        parts.Add($"from {definition.Start}");
        if (definition.SoilDepth is { } depth) parts.Add($"soil {depth.Centimetres.ToString(CultureInfo.InvariantCulture)}cm");
        return new HeatColumn(NameOf(parts), string.Join(", ", parts), definition);
    }

    /// <summary>The column that a text asks for; null, with what is wrong, where it does not.</summary>
    /// <param name="text">The text after <c>--heat</c>.</param>
    /// <param name="temperature">Reads a temperature with its unit, or gives null.</param>
    /// <param name="problem">What is wrong with the text; empty where nothing is.</param>
    public static HeatColumn? Parse(string text, Func<string, Temperature?> temperature, out string problem)
    {
        var parts = new List<string>();
        Temperature? baseTemperature = null;
        Temperature? upper = null;
        DegreeDayMethod? method = null;
        DegreeDayCutoff? cutoff = null;
        AnnualDay? start = null;
        problem = "";
        foreach (string part in text.Split(',', StringSplitOptions.TrimEntries))
        {
            string word = part.ToLowerInvariant();
            if (word.StartsWith("base ", StringComparison.Ordinal) && temperature(part[5..]) is { } lower)
            {
                baseTemperature = lower;
                parts.Add($"base {Celsius(lower)}");
            }
            else if (word.StartsWith("upper ", StringComparison.Ordinal) && temperature(part[6..]) is { } limit)
            {
                upper = limit;
                parts.Add($"upper {Celsius(limit)}");
            }
            else if (Enum.GetValues<DegreeDayMethod>().Where(each => DegreeDayWords.Of(each) == word).Cast<DegreeDayMethod?>().FirstOrDefault() is { } foundMethod)
            {
                method = foundMethod;
                parts.Add(word);
            }
            else if (Enum.GetValues<DegreeDayCutoff>().Where(each => DegreeDayWords.Of(each) == word).Cast<DegreeDayCutoff?>().FirstOrDefault() is { } foundCutoff)
            {
                cutoff = foundCutoff;
                parts.Add(word);
            }
            else if (word.StartsWith("from ", StringComparison.Ordinal) && DateOnly.TryParseExact($"2024-{word[5..].Trim()}", "yyyy-MM-dd", out DateOnly day))
            {
                start = AnnualDay.Of(day);
                parts.Add($"from {start}");
            }
            else
            {
                problem = $"\"{part}\" is not a part of a heat sum.";
                return null;
            }
        }

        if (baseTemperature is null || method is null || start is null) problem = "A heat sum needs a base, a method and a start.";
        else if (upper is { } above && above <= baseTemperature) problem = "The upper threshold must be above the base.";
        else if (upper is null && cutoff is not (null or DegreeDayCutoff.None)) problem = "A cutoff needs an upper threshold.";
        if (problem.Length > 0) return null;
        DegreeDayCutoff chosen = cutoff ?? (upper is null ? DegreeDayCutoff.None : DegreeDayCutoff.Horizontal);
        return new HeatColumn(NameOf(parts), text, new HeatSumDefinition(baseTemperature!.Value, upper, method!.Value, chosen, start!.Value));
    }

    private static string Celsius(Temperature temperature) => $"{Math.Round(temperature.Celsius, 2).ToString(CultureInfo.InvariantCulture)}c";

    private static string NameOf(IReadOnlyList<string> parts)
    {
        var name = new StringBuilder("heat_sum");
        foreach (char each in $"_{string.Join('_', parts)}") name.Append(char.IsAsciiLetterOrDigit(each) ? each : '_');
        return name.ToString();
    }
}
