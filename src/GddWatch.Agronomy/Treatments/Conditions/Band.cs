namespace GddWatch.Agronomy.Treatments.Conditions;

/// <summary>A range of values, both ends in it; an end may be infinite.</summary>
/// <param name="Low">The lower end.</param>
/// <param name="High">The upper end.</param>
internal readonly record struct Band(double Low, double High)
{
    /// <summary>Whether a value lies in it; never so for NaN.</summary>
    public bool Holds(double value) => value >= Low && value <= High;

    /// <summary>At or above a value.</summary>
    public static Band From(double low) => new(low, double.PositiveInfinity);

    /// <summary>At or below a value.</summary>
    public static Band UpTo(double high) => new(double.NegativeInfinity, high);
}
