namespace GddWatch.Agronomy.Quantities;

/// <summary>A depth of water: rain, watering, what is missing from the soil. Never negative. The default value is none at all.</summary>
public readonly record struct WaterDepth
{
    private const double MillimetresPerInch = 25.4;

    private WaterDepth(double millimetres) => Millimetres = millimetres;

    /// <summary>The depth [mm].</summary>
    public double Millimetres { get; }

    /// <summary>The depth [inches].</summary>
    public double Inches => Millimetres / MillimetresPerInch;

    /// <summary>A depth in millimetres.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is negative or not finite.</exception>
    public static WaterDepth FromMillimetres(double millimetres)
    {
        if (!double.IsFinite(millimetres) || millimetres < 0) throw new ArgumentOutOfRangeException(nameof(millimetres), millimetres, "A depth of water was expected, 0 mm or more.");
        return new WaterDepth(millimetres);
    }

    /// <summary>A depth in inches.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is negative or not finite.</exception>
    public static WaterDepth FromInches(double inches) => FromMillimetres(inches * MillimetresPerInch);
}
