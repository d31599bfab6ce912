namespace GddWatch.Agronomy.Quantities;

/// <summary>
/// An amount of accumulated heat, kept in °C-days. A difference of temperature times days: converts by 9/5 without offset.
/// The default value is no heat.
/// </summary>
public readonly record struct DegreeDays : IComparable<DegreeDays>
{
    private DegreeDays(double celsiusDays) => CelsiusDays = celsiusDays;

    /// <summary>The heat [°C-days].</summary>
    public double CelsiusDays { get; }

    /// <summary>The heat [°F-days]: 9/5 of the °C-days.</summary>
    public double FahrenheitDays => CelsiusDays * 9.0 / 5.0;

    /// <summary>Heat from °C-days.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static DegreeDays FromCelsiusDays(double celsiusDays) => new(Demand.NotNegative(celsiusDays, "degree-days [°C-days]"));

    /// <summary>Heat from °F-days.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static DegreeDays FromFahrenheitDays(double fahrenheitDays) =>
        new(Demand.NotNegative(fahrenheitDays, "degree-days [°F-days]") * 5.0 / 9.0);

    /// <summary>Less heat than.</summary>
    public static bool operator <(DegreeDays left, DegreeDays right) => left.CelsiusDays < right.CelsiusDays;

    /// <summary>More heat than.</summary>
    public static bool operator >(DegreeDays left, DegreeDays right) => left.CelsiusDays > right.CelsiusDays;

    /// <summary>At most as much heat as.</summary>
    public static bool operator <=(DegreeDays left, DegreeDays right) => left.CelsiusDays <= right.CelsiusDays;

    /// <summary>At least as much heat as.</summary>
    public static bool operator >=(DegreeDays left, DegreeDays right) => left.CelsiusDays >= right.CelsiusDays;

    /// <inheritdoc/>
    public int CompareTo(DegreeDays other) => CelsiusDays.CompareTo(other.CelsiusDays);
}
