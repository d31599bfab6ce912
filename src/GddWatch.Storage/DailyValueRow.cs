using GddWatch.Agronomy.Weather;

namespace GddWatch.Storage;

/// <summary>One value of a day as it stands in the table.</summary>
internal sealed class DailyValueRow
{
    public string Site { get; init; } = "";

    public string Feed { get; init; } = "";

    public string Day { get; init; } = "";

    public string Variable { get; init; } = "";

    public double Value { get; init; }

    public string SeenAt { get; init; } = "";

    public string? ReplacedAt { get; init; }

    public static WeatherVariable VariableOf(string word) =>
        Enum.TryParse(word, out WeatherVariable variable) && Enum.IsDefined(variable) ? variable : throw new FormatException($"'{word}' where a weather variable belongs");
}
