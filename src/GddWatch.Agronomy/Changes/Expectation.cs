using GddWatch.Agronomy.Chances;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Changes;

/// <summary>
/// When an open window is expected to end, the same wherever people read it: the date itself where the calendar alone decides the close, as the usual first freeze does; else the day of an even chance; else, where
/// the days ahead are not known, the usual pace of earlier seasons at the same site, counted from where this season stands.
/// </summary>
/// <param name="window">The window.</param>
/// <param name="metrics">The site's weather as of the day.</param>
/// <param name="ahead">What the days ahead may bring; it is asked only where the calendar does not decide.</param>
/// <param name="day">The day.</param>
public sealed class Expectation(Window window, SiteMetrics metrics, DaysAhead ahead, DateOnly day)
{
    private readonly Lazy<UsualDate?> knownClose = new(() => window.Treatment.Closed?.KnownDay(new SeasonView(metrics, window.Season)) is { Day: not null } closes ? closes : null, isThreadSafe: false);

    private WindowChances? Closing => ahead.Of(window) is { OfClosing: true, Median: not null } chances ? chances : null;

    /// <summary>The day on which it is expected to close; null where that cannot be said.</summary>
    public DateOnly? Close
    {
        get
        {
            DateOnly? closes = knownClose.Value?.Day ?? Closing?.Median ?? metrics.Climate.PaceOf(window).ClosesAbout(window, day);
            return closes > window.Season.Span.Last ? window.Season.Span.Last : closes;
        }
    }

    /// <summary>Whether the calendar alone decides it, and not the weather of the days ahead.</summary>
    public bool IsOfCalendar => knownClose.Value is not null;

    /// <summary>The expectation in a sentence, with what it rests on.</summary>
    public string InWords()
    {
        if (knownClose.Value is { Day: { } closes, Source: var source })
        {
            string best = window.State == WindowState.Open && window.Treatment.Closing?.KnownDay(new SeasonView(metrics, window.Season))?.Day is { } past && past > day
                ? $"is past its best from {Wording.Day(past)} and "
                : "";
            return closes > window.Season.Span.Last
                ? $"It {best}closes with its season on {Wording.Day(window.Season.Span.Last)}: what closes it comes later, on {Wording.Day(closes)}, {source}."
                : $"It {best}closes on {Wording.Day(closes)}: {source}.";
        }

        UsualPace pace = metrics.Climate.PaceOf(window);
        if (Closing is null) return pace.InWords(window, day);
        string usualBest = pace.PastBestAbout(window, day) is { } about && about < Close ? $" At the usual pace it is past its best from about {Wording.Day(about)}." : "";
        string range = Closing.Latest != Closing.Earliest ? $"likely {ChancesWords.Range(Closing)}, " : "";
        return $"It closes about {Wording.Day(Close!.Value)} ({range}by {ChancesWords.Basis(Closing)}).{usualBest}";
    }

    /// <summary>How long it is still open, within a sentence: "about 19 days left, until Saturday 7 June (likely to close between Wednesday 4 and Friday 13 June)"; empty where that cannot be said.</summary>
    public string Left()
    {
        if (Close is not { } closes) return "";
        string left = closes > day ? $"about {Wording.Days(closes.DayNumber - day.DayNumber)} left, until {Wording.DayInYear(closes)}" : "about to close";
        return !IsOfCalendar && Closing is { Latest: { } latest } && latest != Closing.Earliest ? $"{left} ({ChancesWords.Likely(Closing)})" : left;
    }
}
