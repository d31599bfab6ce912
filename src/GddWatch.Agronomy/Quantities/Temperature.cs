namespace GddWatch.Agronomy.Quantities;

/// <summary>
/// A point on the temperature scale, kept in °C. The default value is 0 °C, a real temperature: "missing" is never the default.
/// Ordered from cold to warm.
/// </summary>
public readonly record struct Temperature : IComparable<Temperature>
{
    private Temperature(double celsius) => Celsius = celsius;

    /// <summary>The temperature [°C].</summary>
    public double Celsius { get; }

    /// <summary>The temperature [°F]: F = C · 9/5 + 32.</summary>
    public double Fahrenheit => Celsius * 9.0 / 5.0 + 32.0;

    /// <summary>A temperature from °C.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Temperature FromCelsius(double celsius) => new(Demand.Finite(celsius, "temperature [°C]"));

    /// <summary>A temperature from °F: C = (F − 32) · 5/9.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Temperature FromFahrenheit(double fahrenheit) =>
        new((Demand.Finite(fahrenheit, "temperature [°F]") - 32.0) * 5.0 / 9.0);

    /// <summary>How far apart two temperatures are.</summary>
    public static TemperatureDifference operator -(Temperature left, Temperature right) =>
        TemperatureDifference.FromCelsius(left.Celsius - right.Celsius);

    /// <summary>A temperature moved by a difference.</summary>
    public static Temperature operator +(Temperature left, TemperatureDifference right) => FromCelsius(left.Celsius + right.Celsius);

    /// <summary>Colder than.</summary>
    public static bool operator <(Temperature left, Temperature right) => left.Celsius < right.Celsius;

    /// <summary>Warmer than.</summary>
    public static bool operator >(Temperature left, Temperature right) => left.Celsius > right.Celsius;

    /// <summary>Not warmer than.</summary>
    public static bool operator <=(Temperature left, Temperature right) => left.Celsius <= right.Celsius;

    /// <summary>Not colder than.</summary>
    public static bool operator >=(Temperature left, Temperature right) => left.Celsius >= right.Celsius;

    /// <inheritdoc/>
    public int CompareTo(Temperature other) => Celsius.CompareTo(other.Celsius);
}
