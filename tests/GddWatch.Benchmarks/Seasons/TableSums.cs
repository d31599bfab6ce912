namespace GddWatch.Benchmarks.Seasons;

/// <summary>What each way of computing must find: days with both extremes, and the sums over all of them of the degree-days over 50 °F, of their running sum over the year, and of the 5-day mean.</summary>
internal readonly record struct TableSums(long Days, double DegreeDaysF, double YearSumsF, double FiveDayMeansF)
{
    // Sums of eleven million numbers in another order.
    private const double Tolerance = 1e-9;

    /// <summary>Whether they are the same but for rounding.</summary>
    public bool Equal(TableSums other) =>
        Days == other.Days && Close(DegreeDaysF, other.DegreeDaysF) && Close(YearSumsF, other.YearSumsF) && Close(FiveDayMeansF, other.FiveDayMeansF);

    private static bool Close(double one, double other) => Math.Abs(one - other) <= Tolerance * Math.Max(Math.Abs(one), Math.Abs(other));
}
