using GddWatch.Agronomy.Backtesting.Scores;
using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Backtesting.Fitting;

/// <summary>Fits the two constants of a model to observed dates, and says how well they foretell what they were not fitted to.</summary>
public static class DateFitter
{
    /// <summary>By how much worse than the best the fit may be for constants to count as nearly as good [days].</summary>
    public const double FlatWithinDays = 0.5;

    private static readonly FitCriterion[] OfAnyModel = [FitCriterion.LeastErrorInDays];
    private static readonly FitCriterion[] OfHeatSums =
    [
        FitCriterion.LeastErrorInDays, FitCriterion.LeastCoefficientOfVariation, FitCriterion.LeastDeviationInHeat, FitCriterion.LeastDeviationInDays, FitCriterion.NoSlope,
    ];

    /// <summary>
    /// Searches the constants on a grid over the weather as it is (days below the base add nothing, what must be held is held), by the least root mean square error in days and, for heat
    /// sums, by the published criteria; leaves out each year at every site at once, and each site; draws whole years again for intervals. A date that never comes counts as the day after
    /// the season.
    /// <para>Source: Yang, Logan and Coffey 1995, Agric. For. Meteorol. 74:61-74; science reference 5.3 and 5.4.</para>
    /// </summary>
    /// <param name="model">The model.</param>
    /// <param name="events">The observed dates, at most one for each site and season.</param>
    /// <param name="metrics">The weather of each of their sites.</param>
    /// <param name="drawBelow">The draws, as <see cref="Bootstrap.Percentile"/> takes them.</param>
    /// <returns>The fit, null where fewer than <see cref="DateFit.FewestYears"/> years can be used; and the events that can be used.</returns>
    public static (DateFit? Fit, IReadOnlyList<FitEvent> Usable) Fit(
        DateModel model, IReadOnlyList<FitEvent> events, IReadOnlyDictionary<string, SiteMetrics> metrics, Func<int, int> drawBelow)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(events);
        ArgumentNullException.ThrowIfNull(metrics);
        FitCourses courses = FitCourses.Of(model, events, metrics);
        IReadOnlyList<FitEvent> usable = courses.Events;
        if (usable.Select(each => each.Season.Year).Distinct().Count() < DateFit.FewestYears) return (null, usable);
        (double Days, double MeanC)[] waits = model is HeatSumModel heat ? [.. usable.Select(each => Wait(heat.Sum, metrics[each.Site], each))] : [];
        var grid = new FitGrid(courses, [.. waits.Select(wait => wait.Days)], [.. waits.Select(wait => wait.MeanC)]);
        MeanDate mean = MeanDateOf(usable);
        FittedDates[] fits = [.. (model.IsHeatSum ? OfHeatSums : OfAnyModel).Select(criterion => FitBy(criterion, grid, usable, drawBelow))];
        double[] nearer = [.. mean.YearLeftOutErrors.Zip(fits[0].YearLeftOutErrors, (one, other) => Math.Abs(one) - Math.Abs(other))];
        IReadOnlyList<IReadOnlyList<double>> byYear = [.. usable.Zip(nearer).GroupBy(each => each.First.Season.Year).OrderBy(year => year.Key).Select(year => (IReadOnlyList<double>)[.. year.Select(each => each.Second)])];
        return (
            new DateFit(
                model,
                usable,
                [.. events.Except(usable)],
                fits,
                grid.Flat(FlatWithinDays),
                model.IsHeatSum ? new YangLoganCoffey([.. waits.Select(wait => wait.Days)], [.. waits.Select(wait => wait.MeanC)]) : null,
                mean,
                Bootstrap.Percentile(byYear, drawn => drawn.Average(), drawBelow)),
            usable);
    }

    private static FittedDates FitBy(FitCriterion criterion, FitGrid grid, IReadOnlyList<FitEvent> events, Func<int, int> drawBelow)
    {
        int[] all = [.. Enumerable.Repeat(1, events.Count)];
        FitChoice chosen = grid.Choose(criterion, all);
        int[] leftOutYears = LeftOut(criterion, grid, events, each => each.Season.Year);
        bool severalSites = events.Select(each => each.Site).Distinct(StringComparer.Ordinal).Count() > 1;
        int[] leftOutSites = severalSites ? LeftOut(criterion, grid, events, each => each.Site) : [];
        (ConfidenceInterval? ofGrid, ConfidenceInterval? ofThreshold) = Intervals(criterion, grid, events, drawBelow);
        return new FittedDates
        {
            Criterion = criterion,
            GridValue = grid.GridValue(chosen),
            Threshold = grid.Threshold(chosen),
            GridInterval = ofGrid,
            ThresholdInterval = ofThreshold,
            FittedErrorDays = Enumerable.Range(0, events.Count).Average(e => Math.Abs((double)grid.Error(chosen, e))),
            YearLeftOutErrorDays = leftOutYears.Average(error => Math.Abs((double)error)),
            YearLeftOutBiasDays = leftOutYears.Average(),
            SiteLeftOutErrorDays = severalSites ? leftOutSites.Average(error => Math.Abs((double)error)) : null,
            YearLeftOutErrors = leftOutYears,
        };
    }

    /// <summary>Each event's error by the constants of those that do not share its group.</summary>
    private static int[] LeftOut<TGroup>(FitCriterion criterion, FitGrid grid, IReadOnlyList<FitEvent> events, Func<FitEvent, TGroup> groupOf)
        where TGroup : notnull
    {
        var errors = new int[events.Count];
        foreach (TGroup group in events.Select(groupOf).Distinct())
        {
            int[] others = [.. events.Select(each => groupOf(each).Equals(group) ? 0 : 1)];
            FitChoice chosen = grid.Choose(criterion, others);
            for (int e = 0; e < errors.Length; e++)
            {
                if (others[e] == 0) errors[e] = grid.Error(chosen, e);
            }
        }

        return errors;
    }

    private static (ConfidenceInterval? OfGrid, ConfidenceInterval? OfThreshold) Intervals(FitCriterion criterion, FitGrid grid, IReadOnlyList<FitEvent> events, Func<int, int> drawBelow)
    {
        int[] years = [.. events.Select(each => each.Season.Year).Distinct().Order()];
        int[] yearOf = [.. events.Select(each => Array.IndexOf(years, each.Season.Year))];
        List<double> gridValues = [], thresholds = [];
        foreach (int[] drawn in Bootstrap.Resamples(years.Length, drawBelow))
        {
            var times = new int[years.Length];
            foreach (int year in drawn) times[year]++;
            // The same year over and over has nothing to fit to.
            if (times.Count(count => count > 0) < 3) continue;
            FitChoice chosen = grid.Choose(criterion, [.. yearOf.Select(year => times[year])]);
            gridValues.Add(grid.GridValue(chosen));
            thresholds.Add(grid.Threshold(chosen));
        }

        return (Bootstrap.Interval(gridValues, Bootstrap.UsualDraws), Bootstrap.Interval(thresholds, Bootstrap.UsualDraws));
    }

    private static MeanDate MeanDateOf(IReadOnlyList<FitEvent> events)
    {
        double[] byYear = [.. events.Select(each =>
        {
            FitEvent[] own = [.. events.Where(other => other.Season.Year != each.Season.Year && other.Site == each.Site)];
            FitEvent[] others = own.Length > 0 ? own : [.. events.Where(other => other.Season.Year != each.Season.Year)];
            return others.Average(other => other.Offset) - each.Offset;
        })];
        double[] bySite = [.. events
            .Where(each => events.Any(other => other.Site != each.Site))
            .Select(each => events.Where(other => other.Site != each.Site).Average(other => other.Offset) - each.Offset)];
        double mean = events.Average(each => each.Offset);
        double spread = Math.Sqrt(events.Sum(each => Math.Pow(each.Offset - mean, 2)) / (events.Count - 1));
        return new MeanDate(DateScore.MeanAbsolute(byYear), bySite.Length == 0 ? null : DateScore.MeanAbsolute(bySite), spread, byYear);
    }

    /// <summary>The days from the start of a heat sum to an event, both included, and the mean temperature over them.</summary>
    private static (double Days, double MeanC) Wait(HeatSumDefinition sum, SiteMetrics metrics, FitEvent each)
    {
        HeatSumSeason? season = metrics.HeatSumSeasonOf(sum, each.Day);
        DateOnly start = season?.CountsFrom is { } counts && counts <= each.Day ? counts : season?.Start ?? each.Season.Span.First;
        int first = Math.Max(0, metrics.Series.IndexOf(start));
        int days = metrics.Series.IndexOf(each.Day) - first + 1;
        double[] means = sum.SoilDepth is { } depth ? metrics.Soil(depth).MeanC : metrics.AirMeans(AirValue.Mean, 1);
        return (days, means.Skip(first).Take(days).Average());
    }
}
