using MathNet.Numerics.Statistics;

namespace GddWatch.Agronomy.Backtesting;

/// <summary>Quantiles by a named definition, so that everybody means the same one: with ten values the 90 % date moves four days between definitions.</summary>
public static class Quantiles
{
    /// <summary>
    /// The value below which a share of the values lies: Q = x[⌊h⌋] + (h − ⌊h⌋)(x[⌊h⌋+1] − x[⌊h⌋]) over the values in order, h by the type, ends clamped.
    /// <para>Source: Hyndman and Fan 1996, Sample quantiles in statistical packages, Am. Stat. 50:361-365 (SEEN).</para>
    /// </summary>
    /// <param name="values">The values in any order and any unit, at least one, none of them NaN.</param>
    /// <param name="share">The share, 0 to 1.</param>
    /// <param name="type">The definition.</param>
    /// <exception cref="ArgumentException">There is no value, or one is NaN.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The share is not between 0 and 1, or the type has no name.</exception>
    public static double Of(IReadOnlyList<double> values, double share, QuantileType type = QuantileType.Eight)
    {
        ArgumentNullException.ThrowIfNull(values);
        if (values.Count == 0 || values.Any(double.IsNaN)) throw new ArgumentException("A quantile needs at least one value, and no NaN among them.", nameof(values));
        if (share is not (>= 0 and <= 1)) throw new ArgumentOutOfRangeException(nameof(share), share, "A quantile is asked for a share from 0 to 1.");
        QuantileDefinition definition = type switch
        {
            QuantileType.Seven => QuantileDefinition.R7,
            QuantileType.Eight => QuantileDefinition.R8,
            _ => throw new ArgumentOutOfRangeException(nameof(type), type, "There is no such definition of a quantile here; 7 and 8 are."),
        };
        return values.QuantileCustom(share, definition);
    }

    /// <summary>The middle value: the quantile of a half.</summary>
    public static double Median(IReadOnlyList<double> values) => Of(values, 0.5);
}
