using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Backtesting;

/// <summary>How one window went in one season: the dates, without the way there.</summary>
/// <param name="Window">The window as it was judged.</param>
public sealed record SeasonDates(Window Window)
{
    /// <summary>The site's id.</summary>
    public string Site => Window.Site.Id;

    /// <summary>The year in which the season begins.</summary>
    public int Year => Window.Season.Year;

    /// <summary>The first opening; null where it did not open.</summary>
    public DateOnly? Opens => Window.FirstOpening?.Day;

    /// <summary>The first opening, where nothing unknown stood before it; null where it did not open, or may have opened earlier.</summary>
    public DateOnly? OpensForCertain => Window.MayHaveOpenedEarlier ? null : Opens;

    /// <summary>The last close after an opening; null where there is none.</summary>
    public DateOnly? Closes => Window.LastClosing?.Day;

    /// <summary>Whether it did not open although it was judged to the end.</summary>
    public bool NeverOpened => Opens is null && !Window.CouldNotBeJudged;

    /// <summary>The day that stands in for an opening that never came when dates are scored: the day after the season. Source: science reference 5.3.</summary>
    public DateOnly NeverCountsAs => Window.Season.Span.Last.AddDays(1);

    /// <summary>On how many days of the season it stood open, past its best or not; days on which it waited in between do not count [days].</summary>
    public int DaysOpen
    {
        get
        {
            int days = 0;
            IReadOnlyList<Transition> course = Window.Course;
            for (int i = 0; i < course.Count; i++)
            {
                if (course[i].State is not (WindowState.Open or WindowState.Closing)) continue;
                DateOnly end = i + 1 < course.Count ? course[i + 1].Day : NeverCountsAs;
                days += end.DayNumber - course[i].Day.DayNumber;
            }

            return days;
        }
    }

    /// <summary>Whether a day lies in the open window, from its opening to the day before its close.</summary>
    public bool IsOpenOn(DateOnly day)
    {
        Transition? last = Window.Course.LastOrDefault(transition => transition.Day <= day);
        return last?.State is WindowState.Open or WindowState.Closing && Window.Season.Span.Contains(day);
    }
}
