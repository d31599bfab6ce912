namespace GddWatch.Agronomy.Quantities;

/// <summary>A depth below the soil surface, kept in mm, never negative. The default value is the surface.</summary>
public readonly record struct Depth
{
    private Depth(double millimetres) => Millimetres = millimetres;

    /// <summary>The depth [mm].</summary>
    public double Millimetres { get; }

    /// <summary>The depth [cm].</summary>
    public double Centimetres => Millimetres / 10.0;

    /// <summary>The depth [inch]: 25.4 mm each.</summary>
    public double Inches => Millimetres / 25.4;

    /// <summary>A depth from cm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static Depth FromCentimetres(double centimetres) => new(Demand.NotNegative(centimetres, "depth [cm]") * 10.0);

    /// <summary>A depth from inches.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static Depth FromInches(double inches) => new(Demand.NotNegative(inches, "depth [inch]") * 25.4);
}
