using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Backtesting.Fitting;

/// <summary>
/// What a model's course was on each day of each event's season, for every value of its second constant, so that a date for any threshold is found without looking at the weather again.
/// A course that falls is held with its sign changed, so that every date is the first on which a rising edge reaches a value.
/// </summary>
internal sealed class FitCourses
{
    private readonly double[][][] edges;

    private FitCourses(DateModel model, IReadOnlyList<FitEvent> events, double[][][] edges, double[][] atEvent)
    {
        Model = model;
        Events = events;
        this.edges = edges;
        AtEvent = atEvent;
        Grid = model.Grid;
    }

    public DateModel Model { get; }

    public IReadOnlyList<double> Grid { get; }

    /// <summary>The events whose seasons the weather holds without a hole up to the event.</summary>
    public IReadOnlyList<FitEvent> Events { get; }

    /// <summary>The highest value of the course up to the event, by the place in the grid and the event.</summary>
    public double[][] AtEvent { get; }

    /// <summary>The courses over the seasons of some events; an event whose season has a hole before it is left out.</summary>
    public static FitCourses Of(DateModel model, IReadOnlyList<FitEvent> events, IReadOnlyDictionary<string, SiteMetrics> metrics)
    {
        IReadOnlyList<double> grid = model.Grid;
        double sign = model.Falls ? -1 : 1;
        var columns = new Dictionary<(string, int), double[]>();
        foreach (string site in events.Select(each => each.Site).Distinct(StringComparer.Ordinal))
        {
            for (int g = 0; g < grid.Count; g++) columns.Add((site, g), model.Column(metrics[site], grid[g]));
        }

        FitEvent[] usable = [.. events.Where(each => Enumerable.Range(0, grid.Count).All(g => IsKnown(columns[(each.Site, g)], metrics[each.Site], each)))];
        double[][][] courses = [.. Enumerable.Range(0, grid.Count).Select(g => (double[][])[.. usable.Select(each => Edge(columns[(each.Site, g)], metrics[each.Site], each, sign))])];
        double[][] atEvent = [.. courses.Select(byEvent => (double[])[.. byEvent.Select((edge, e) => edge[usable[e].Offset])])];
        return new FitCourses(model, usable, courses, atEvent);
    }

    /// <summary>The day of the season on which the course first reaches a value; the day after the season where it does not.</summary>
    public int Date(int grid, double edge, int place)
    {
        double[] course = edges[grid][place];
        int low = 0, high = course.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            if (course[middle] >= edge) high = middle;
            else low = middle + 1;
        }

        return low;
    }

    private static bool IsKnown(double[] column, SiteMetrics metrics, FitEvent each)
    {
        if (each.Offset < 0 || each.Day > each.Season.Span.Last) return false;
        int first = metrics.Series.IndexOf(each.Season.Span.First);
        int last = metrics.Series.IndexOf(each.Season.Span.Last);
        if (first < 0 || last >= column.Length) return false;
        // The first days of a record may lack a mean that reaches back before it.
        bool begun = false;
        for (int day = first; day <= last; day++)
        {
            if (!double.IsNaN(column[day])) begun = true;
            else if (begun || day - first > WindowJudge.LateStartDays * 3) return false;
        }

        return begun && !double.IsNaN(column[first + each.Offset]);
    }

    /// <summary>The highest value up to each day of the season.</summary>
    private static double[] Edge(double[] column, SiteMetrics metrics, FitEvent each, double sign)
    {
        int first = metrics.Series.IndexOf(each.Season.Span.First);
        var edge = new double[each.Season.Span.Days];
        double highest = double.NegativeInfinity;
        for (int day = 0; day < edge.Length; day++)
        {
            double value = column[first + day] * sign;
            if (value > highest) highest = value;
            edge[day] = highest;
        }

        return edge;
    }
}
