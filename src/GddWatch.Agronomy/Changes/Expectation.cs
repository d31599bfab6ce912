using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Changes;

/// <summary>When an open window is expected to end.</summary>
public static class Expectation
{
    /// <summary>
    /// The expectation in words: the dates themselves where the calendar alone decides the close, as the usual first freeze does; else the usual pace of
    /// earlier seasons at the same site, counted from where this season stands.
    /// </summary>
    public static string InWords(Window window, SiteMetrics metrics, DateOnly day)
    {
        var view = new SeasonView(metrics, window.Season);
        if (window.Treatment.Closed?.KnownDay(view) is not { Day: { } closes, Source: var source }) return metrics.Climate.PaceOf(window).InWords(window, day);
        string best = window.State == WindowState.Open && window.Treatment.Closing?.KnownDay(view)?.Day is { } past && past > day
            ? $"is past its best from {Wording.Day(past)} and "
            : "";
        return $"It {best}closes on {Wording.Day(closes)}: {source}.";
    }

    /// <summary>The day on which an open window is expected to close, by the same rules; null where that cannot be said.</summary>
    public static DateOnly? Close(Window window, SiteMetrics metrics, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(window);
        var view = new SeasonView(metrics, window.Season);
        DateOnly? known = window.Treatment.Closed?.KnownDay(view)?.Day ?? metrics.Climate.PaceOf(window).ClosesAbout(window, day);
        return known > window.Season.Span.Last ? window.Season.Span.Last : known;
    }
}
