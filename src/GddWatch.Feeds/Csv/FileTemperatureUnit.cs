namespace GddWatch.Feeds.Csv;

/// <summary>The unit of temperatures in a file.</summary>
public enum FileTemperatureUnit
{
    /// <summary>°C.</summary>
    Celsius,

    /// <summary>°F.</summary>
    Fahrenheit,
}
