namespace GddWatch.Agronomy.Quantities;

/// <summary>
/// How far apart two temperatures are, kept in °C. Converts by 9/5 without the offset of 32 that a point on the scale has.
/// The default value is no difference.
/// </summary>
public readonly record struct TemperatureDifference
{
    private TemperatureDifference(double celsius) => Celsius = celsius;

    /// <summary>The difference [°C].</summary>
    public double Celsius { get; }

    /// <summary>The difference [°F]: 9/5 of the one in °C.</summary>
    public double Fahrenheit => Celsius * 9.0 / 5.0;

    /// <summary>A difference from °C.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static TemperatureDifference FromCelsius(double celsius) => new(Demand.Finite(celsius, "temperature difference [°C]"));

    /// <summary>A difference from °F.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static TemperatureDifference FromFahrenheit(double fahrenheit) =>
        new(Demand.Finite(fahrenheit, "temperature difference [°F]") * 5.0 / 9.0);
}
