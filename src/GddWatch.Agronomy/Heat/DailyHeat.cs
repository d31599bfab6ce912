namespace GddWatch.Agronomy.Heat;

/// <summary>One day's heat by any method and cutoff.</summary>
public static class DailyHeat
{
    /// <summary>
    /// Gives a day's heat by the method, whose own page has the equation.
    /// <para>Missing extremes (NaN) are refused; so is a missing next minimum where the method reads it.</para>
    /// </summary>
    /// <param name="method">How the day's heat is reckoned.</param>
    /// <param name="cutoff">What happens above the upper threshold.</param>
    /// <param name="minimumC">Lowest temperature of the day [°C].</param>
    /// <param name="maximumC">Highest temperature of the day [°C].</param>
    /// <param name="nextMinimumC">Lowest temperature of the next day [°C]; only the double methods read it.</param>
    /// <param name="baseC">Base [°C].</param>
    /// <param name="upperC">Upper threshold [°C]; null for none, and the cutoff then has nothing to act on.</param>
    /// <returns>Heat [°C-days], 0 or more.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An extreme is missing (NaN) or infinite, the minimum lies above the maximum, a threshold is not finite, the upper threshold
    /// is not above the base, or the method or cutoff is none of the named ones.</exception>
    public static double DegreeDays(
        DegreeDayMethod method,
        DegreeDayCutoff cutoff,
        double minimumC,
        double maximumC,
        double nextMinimumC,
        double baseC,
        double? upperC) => method switch
        {
            DegreeDayMethod.SimpleAverage => SimpleAverage.DegreeDays(cutoff, minimumC, maximumC, baseC, upperC),
            DegreeDayMethod.AverageWithLimitedExtremes => AverageWithLimitedExtremes.DegreeDays(cutoff, minimumC, maximumC, baseC, upperC),
            DegreeDayMethod.SingleSine => SingleSine.DegreeDays(cutoff, minimumC, maximumC, baseC, upperC),
            DegreeDayMethod.DoubleSine => DoubleSine.DegreeDays(cutoff, minimumC, maximumC, nextMinimumC, baseC, upperC),
            DegreeDayMethod.SingleTriangle => SingleTriangle.DegreeDays(cutoff, minimumC, maximumC, baseC, upperC),
            DegreeDayMethod.DoubleTriangle => DoubleTriangle.DegreeDays(cutoff, minimumC, maximumC, nextMinimumC, baseC, upperC),
            _ => throw HeatDemand.Unknown(method),
        };

    /// <summary>Whether a method reads the next day's minimum, so that the last day of a series is provisional.</summary>
    public static bool ReadsNextMinimum(DegreeDayMethod method) => method is DegreeDayMethod.DoubleSine or DegreeDayMethod.DoubleTriangle;
}
