namespace GddWatch.Agronomy.Heat;

/// <summary>The heat of each day of a column. The methods' own functions, without their refusals day by day.</summary>
internal static class DailyHeatColumn
{
    /// <summary>
    /// Fills in each day's heat; NaN for a missing day. The double methods take a missing next minimum, and the last day's, from the day itself.
    /// </summary>
    /// <returns>The place of the first day whose extremes no day can have, where filling stopped; else −1.</returns>
    public static int Fill(
        DegreeDayMethod method,
        DegreeDayCutoff cutoff,
        ReadOnlySpan<double> minimumC,
        ReadOnlySpan<double> maximumC,
        double baseC,
        double upperC,
        Span<double> heat)
    {
        HeatDemand.Named(cutoff);
        return method switch
        {
            DegreeDayMethod.SimpleAverage => Single<MeanAllDay>(cutoff, minimumC, maximumC, baseC, upperC, heat),
            DegreeDayMethod.AverageWithLimitedExtremes => Single<ExtremesHalfTheDayEach>(cutoff, minimumC, maximumC, baseC, upperC, heat),
            DegreeDayMethod.SingleSine => SineColumn.Fill(doubled: false, cutoff, minimumC, maximumC, baseC, upperC, heat),
            DegreeDayMethod.DoubleSine => SineColumn.Fill(doubled: true, cutoff, minimumC, maximumC, baseC, upperC, heat),
            DegreeDayMethod.SingleTriangle => Single<TriangleCurve>(cutoff, minimumC, maximumC, baseC, upperC, heat),
            DegreeDayMethod.DoubleTriangle => Double<TriangleCurve>(cutoff, minimumC, maximumC, baseC, upperC, heat),
            _ => throw HeatDemand.Unknown(method),
        };
    }

    private static int Single<TCurve>(
        DegreeDayCutoff cutoff, ReadOnlySpan<double> minimumC, ReadOnlySpan<double> maximumC, double baseC, double upperC, Span<double> heat)
        where TCurve : IDayCurve
    {
        for (int i = 0; i < heat.Length; i++)
        {
            if (HeatDemand.Impossible(minimumC[i], maximumC[i])) return i;
            heat[i] = CutoffRule.DegreeDays<TCurve>(cutoff, minimumC[i], maximumC[i], baseC, upperC);
        }

        return -1;
    }

    private static int Double<TCurve>(
        DegreeDayCutoff cutoff, ReadOnlySpan<double> minimumC, ReadOnlySpan<double> maximumC, double baseC, double upperC, Span<double> heat)
        where TCurve : IDayCurve
    {
        for (int i = 0; i < heat.Length; i++)
        {
            if (HeatDemand.Impossible(minimumC[i], maximumC[i])) return i;
            double nextMinimumC = i + 1 < heat.Length ? minimumC[i + 1] : double.NaN;

            // An infinite next minimum is refused as the next day's own; until then it must not reach this day's sum.
            if (!double.IsFinite(nextMinimumC)) nextMinimumC = minimumC[i];
            heat[i] = CutoffRule.Halves<TCurve>(cutoff, minimumC[i], maximumC[i], nextMinimumC, baseC, upperC);
        }

        return -1;
    }
}
