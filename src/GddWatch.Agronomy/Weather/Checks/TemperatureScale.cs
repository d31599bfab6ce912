namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>The scale in which somebody says that temperatures are written.</summary>
public enum TemperatureScale
{
    /// <summary>°C.</summary>
    Celsius,

    /// <summary>°F.</summary>
    Fahrenheit,
}
