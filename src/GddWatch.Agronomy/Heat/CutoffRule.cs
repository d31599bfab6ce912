namespace GddWatch.Agronomy.Heat;

/// <summary>
/// A day's heat from the two functions of its curve: A(c), the day's mean of max(0, T − c), and F(c), the fraction of the day with T &gt; c. One line a
/// cutoff takes the place of the six cases that tables print for each curve.
/// <para>Source: Zalom, Goodell, Wilson, Barnett &amp; Bentley 1983, Degree-days: the calculation and use of heat units in pest management, Univ. California
/// Leaflet 21373 (MEMORY); the form with A and F is derived and checked by quadrature (CALC).</para>
/// </summary>
internal static class CutoffRule
{
    /// <summary>The heat of a day whose extremes and thresholds were looked at before.</summary>
    public static double DegreeDays<TCurve>(DegreeDayCutoff cutoff, double minimumC, double maximumC, double baseC, double upperC)
        where TCurve : IDayCurve
    {
        if (double.IsNaN(minimumC) || double.IsNaN(maximumC)) return double.NaN;
        double heat = TCurve.MeanAbove(baseC, minimumC, maximumC);
        if (double.IsPositiveInfinity(upperC)) return heat;

        // Rounding must not leave a day a breath below no heat at all: hence the floor in every case, though only the day's floor needs it.
        return cutoff switch
        {
            DegreeDayCutoff.None => heat,
            DegreeDayCutoff.Horizontal => Math.Max(0.0, heat - TCurve.MeanAbove(upperC, minimumC, maximumC)),
            DegreeDayCutoff.Intermediate => Math.Max(0.0, heat - 2.0 * TCurve.MeanAbove(upperC, minimumC, maximumC)),
            DegreeDayCutoff.IntermediatePointwise => Math.Max(
                0.0,
                heat - 2.0 * TCurve.MeanAbove(upperC, minimumC, maximumC) + TCurve.MeanAbove(2.0 * upperC - baseC, minimumC, maximumC)),
            DegreeDayCutoff.Vertical => Math.Max(
                0.0,
                heat - TCurve.MeanAbove(upperC, minimumC, maximumC) - (upperC - baseC) * TCurve.FractionAbove(upperC, minimumC, maximumC)),
            _ => throw HeatDemand.Unknown(cutoff),
        };
    }

    /// <summary>The heat of one day through the curve, refusing what no day can have.</summary>
    public static double Single<TCurve>(DegreeDayCutoff cutoff, double minimumC, double maximumC, double baseC, double? upperC)
        where TCurve : IDayCurve
    {
        HeatDemand.Named(cutoff);
        double upper = HeatDemand.Thresholds(baseC, upperC);
        HeatDemand.KnownExtremes(minimumC, maximumC);
        return DegreeDays<TCurve>(cutoff, minimumC, maximumC, baseC, upper);
    }

    /// <summary>The heat of one day through two half curves, refusing what no day can have.</summary>
    public static double Double<TCurve>(
        DegreeDayCutoff cutoff, double minimumC, double maximumC, double nextMinimumC, double baseC, double? upperC)
        where TCurve : IDayCurve
    {
        HeatDemand.Named(cutoff);
        double upper = HeatDemand.Thresholds(baseC, upperC);
        HeatDemand.KnownExtremes(minimumC, maximumC);
        HeatDemand.NextMinimum(nextMinimumC);
        return Halves<TCurve>(cutoff, minimumC, maximumC, nextMinimumC, baseC, upper);
    }

    /// <summary>
    /// The mean of the two halves' heat: from the minimum up to the maximum, and from there to the next minimum. Where the night stays warmer than the day
    /// was, the second half rises.
    /// </summary>
    public static double Halves<TCurve>(
        DegreeDayCutoff cutoff, double minimumC, double maximumC, double nextMinimumC, double baseC, double upperC)
        where TCurve : IDayCurve
    {
        double first = DegreeDays<TCurve>(cutoff, minimumC, maximumC, baseC, upperC);
        double second = DegreeDays<TCurve>(cutoff, Math.Min(nextMinimumC, maximumC), Math.Max(nextMinimumC, maximumC), baseC, upperC);
        return (first + second) / 2.0;
    }
}
