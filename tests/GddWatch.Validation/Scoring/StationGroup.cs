using GddWatch.Validation.Weather;

namespace GddWatch.Validation.Scoring;

/// <summary>Stations whose errors are taken together.</summary>
internal sealed record StationGroup(string Name, Func<MeasuredStation, bool> Holds)
{
    /// <summary>At least 600 mm of precipitation a year: where lawns grow without constant watering.</summary>
    public static StationGroup Humid { get; } = new("humid", station => station.IsHumid);

    public static StationGroup Dry { get; } = new("dry", station => !station.IsHumid);

    public static StationGroup All { get; } = new("all", _ => true);
}
