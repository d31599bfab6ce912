namespace GddWatch.Storage;

/// <summary>One value of a forecast day as it stands in the table.</summary>
internal sealed class ForecastValueRow
{
    public string Site { get; init; } = "";

    public string Feed { get; init; } = "";

    public string IssuedAt { get; init; } = "";

    public string IssuedOn { get; init; } = "";

    public string Day { get; init; } = "";

    public string Variable { get; init; } = "";

    public double Value { get; init; }
}
