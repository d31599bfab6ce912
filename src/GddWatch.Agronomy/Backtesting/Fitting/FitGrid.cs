namespace GddWatch.Agronomy.Backtesting.Fitting;

/// <summary>The errors of all constants that are tried at all events, made once; choosing constants for some of the events is then a sum.</summary>
internal sealed class FitGrid
{
    private const int MostThresholds = 120;
    private const double Tie = 1e-9;

    private readonly FitCourses courses;
    private readonly IReadOnlyList<double> days;
    private readonly IReadOnlyList<double> meansC;
    private readonly List<FitChoice> candidates = [];
    private readonly int[] squares;

    public FitGrid(FitCourses courses, IReadOnlyList<double> days, IReadOnlyList<double> meansC)
    {
        this.courses = courses;
        this.days = days;
        this.meansC = meansC;
        for (int g = 0; g < courses.Grid.Count; g++) candidates.AddRange(ThresholdsOf(g).Select(edge => new FitChoice(g, edge)));
        int events = courses.Events.Count;
        squares = new int[candidates.Count * events];
        for (int c = 0; c < candidates.Count; c++)
        {
            for (int e = 0; e < events; e++)
            {
                int error = Error(candidates[c], e);
                squares[c * events + e] = error * error;
            }
        }
    }

    public double GridValue(FitChoice choice) => courses.Grid[choice.Grid];

    public double Threshold(FitChoice choice) => courses.Model.Falls ? -choice.Edge : choice.Edge;

    /// <summary>Foretold less observed day of an event [days].</summary>
    public int Error(FitChoice choice, int place) => courses.Date(choice.Grid, choice.Edge, place) - courses.Events[place].Offset;

    /// <summary>The constants by a criterion, where each event counts as often as its weight says.</summary>
    public FitChoice Choose(FitCriterion criterion, int[] weights) => criterion == FitCriterion.LeastErrorInDays ? ByDays(weights) : ByHeat(criterion, weights);

    /// <summary>The constants that are nearly as good as the best.</summary>
    public FlatOptimum Flat(double withinDays)
    {
        int[] all = [.. Enumerable.Repeat(1, courses.Events.Count)];
        FitChoice best = ByDays(all);
        double limit = Math.Sqrt(candidates.Select((_, c) => SumOfSquares(c, all)).Min() / (double)all.Length) + withinDays;
        FitChoice[] near = [.. candidates.Where((_, c) => Math.Sqrt(SumOfSquares(c, all) / (double)all.Length) <= limit + Tie)];
        double[] thresholds = [.. near.Select(Threshold)];
        double[] atBest = [.. near.Where(each => each.Grid == best.Grid).Select(Threshold)];
        return new FlatOptimum(withinDays, near.Min(GridValue), near.Max(GridValue), thresholds.Min(), thresholds.Max(), atBest.Min(), atBest.Max());
    }

    private FitChoice ByDays(int[] weights)
    {
        long least = long.MaxValue;
        var tied = new List<int>();
        for (int c = 0; c < candidates.Count; c++)
        {
            long sum = SumOfSquares(c, weights);
            if (sum > least) continue;
            if (sum < least) tied.Clear();
            least = sum;
            tied.Add(c);
        }

        // Whole days make plateaus: the middle of one is the least likely to be an edge.
        return candidates[tied[tied.Count / 2]];
    }

    private long SumOfSquares(int candidate, int[] weights)
    {
        long sum = 0;
        int at = candidate * weights.Length;
        for (int e = 0; e < weights.Length; e++) sum += weights[e] * (long)squares[at + e];
        return sum;
    }

    private FitChoice ByHeat(FitCriterion criterion, int[] weights)
    {
        int best = 0;
        double least = double.PositiveInfinity;
        double threshold = 0;
        for (int g = 0; g < courses.Grid.Count; g++)
        {
            double[] heat = courses.AtEvent[g];
            double mean = Mean(heat, weights);
            if (mean <= 0) continue;
            double value = criterion switch
            {
                FitCriterion.LeastDeviationInHeat => Deviation(heat, weights),
                FitCriterion.LeastCoefficientOfVariation => Deviation(heat, weights) / mean,
                FitCriterion.LeastDeviationInDays => Deviation(heat, weights) / (mean / Mean(days, weights)),
                FitCriterion.NoSlope => Math.Abs(Slope(meansC, heat, weights)),
                _ => throw new ArgumentOutOfRangeException(nameof(criterion), criterion, "There is no such criterion."),
            };
            if (!(value < least)) continue;
            (best, least, threshold) = (g, value, mean);
        }

        return new FitChoice(best, threshold);
    }

    private IEnumerable<double> ThresholdsOf(int grid)
    {
        double low = courses.AtEvent[grid].Min(), high = courses.AtEvent[grid].Max();
        double step = courses.Model.ThresholdStep;
        step *= Math.Max(1, Math.Ceiling((high - low) / step / MostThresholds));
        int first = (int)Math.Floor(low / step) - 1;
        int last = (int)Math.Ceiling(high / step) + 1;
        for (int k = first; k <= last; k++)
        {
            if (courses.Model.IsHeatSum && k <= 0) continue;
            yield return k * step;
        }
    }

    private static double Mean(IReadOnlyList<double> values, int[] weights)
    {
        double sum = 0, count = 0;
        for (int e = 0; e < weights.Length; e++)
        {
            sum += weights[e] * values[e];
            count += weights[e];
        }

        return sum / count;
    }

    private static double Deviation(double[] values, int[] weights)
    {
        double mean = Mean(values, weights), sum = 0, count = 0;
        for (int e = 0; e < weights.Length; e++)
        {
            sum += weights[e] * (values[e] - mean) * (values[e] - mean);
            count += weights[e];
        }

        return Math.Sqrt(sum / (count - 1));
    }

    /// <summary>Slope of the line of y on x by least squares.</summary>
    internal static double Slope(IReadOnlyList<double> x, IReadOnlyList<double> y, int[] weights)
    {
        double meanX = Mean(x, weights), meanY = Mean(y, weights), both = 0, own = 0;
        for (int e = 0; e < weights.Length; e++)
        {
            both += weights[e] * (x[e] - meanX) * (y[e] - meanY);
            own += weights[e] * (x[e] - meanX) * (x[e] - meanX);
        }

        return both / own;
    }
}
