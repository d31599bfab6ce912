using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Journal;

/// <summary>What a soil thermometer showed.</summary>
public sealed record SoilReading : JournalEntry
{
    /// <summary>The site's time of day; null where the value is the mean of the day.</summary>
    public TimeOnly? At { get; init; }

    /// <summary>The depth of the thermometer's tip.</summary>
    public required Depth Depth { get; init; }

    /// <summary>What it showed.</summary>
    public required Temperature Value { get; init; }
}
