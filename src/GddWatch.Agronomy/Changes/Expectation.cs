using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Changes;

/// <summary>When an open window is expected to end.</summary>
public static class Expectation
{
    /// <summary>
    /// The expectation in words: the dates themselves where the calendar alone decides the close, as the usual first freeze does; else how the window went
    /// in earlier seasons at the same site.
    /// </summary>
    public static string InWords(Window window, SiteMetrics metrics, DateOnly day)
    {
        var view = new SeasonView(metrics, window.Season);
        if (window.Treatment.Closed?.KnownDay(view) is not { } closes) return UsualCourse.Before(window, metrics).InWords(window.State, day);
        bool stillAtItsBest = window.State == WindowState.Open && window.Treatment.Closing?.KnownDay(view) is { } past && past > day;
        string best = stillAtItsBest ? $"is past its best from {Wording.Day(window.Treatment.Closing!.KnownDay(view)!.Value)} and " : "";
        return $"It {best}closes on {Wording.Day(closes)}, as the usual first freeze here sets it.";
    }
}
