using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Treatments;
using MathNet.Numerics.Statistics;

namespace GddWatch.Agronomy.Windows;

/// <summary>
/// How long a window has lasted in earlier seasons at the same site. Counted from this season's own opening, an early or late season moves the expectation
/// along with it, which a usual date would not.
/// </summary>
/// <param name="Seasons">How many earlier seasons opened and closed.</param>
/// <param name="DaysToPastBest">Days from opening to past its best, one for each season that had it [days].</param>
/// <param name="DaysToClose">Days from opening to the close [days].</param>
/// <param name="DaysFromPastBestToClose">Days from past its best to the close [days].</param>
public sealed record UsualPace(
    int Seasons, IReadOnlyList<double> DaysToPastBest, IReadOnlyList<double> DaysToClose, IReadOnlyList<double> DaysFromPastBestToClose)
{
    /// <summary>The pace of the seasons before a window's own, each judged by the same code. Openings that may have come earlier are left out.</summary>
    public static UsualPace Before(Window window, SiteMetrics metrics)
    {
        var toPastBest = new List<double>();
        var toClose = new List<double>();
        var between = new List<double>();
        for (int year = metrics.Series.FirstDay.Year; year < window.Season.Year; year++)
        {
            Season season = window.Treatment.Season.BeginningIn(year, metrics.Site.Hemisphere);
            Window earlier = WindowJudge.JudgeSeason(window.Treatment, metrics, season, season.Span.Last);
            if (earlier.MayHaveOpenedEarlier || earlier is not { FirstOpening: { } opening, LastClosing: { } closing }) continue;
            toClose.Add(closing.Day.DayNumber - opening.Day.DayNumber);
            if (earlier.PastBest is not { } past) continue;
            toPastBest.Add(past.Day.DayNumber - opening.Day.DayNumber);
            between.Add(closing.Day.DayNumber - past.Day.DayNumber);
        }

        return new UsualPace(toClose.Count, toPastBest, toClose, between);
    }

    /// <summary>
    /// What to expect of an open window, in words. Median of type 8 after Hyndman &amp; Fan 1996, Am. Stat. 50:361-365 (SEEN); said only where there are at least
    /// <see cref="SiteClimate.SeasonsNeeded"/> earlier seasons.
    /// </summary>
    public string InWords(Window window, DateOnly day)
    {
        if (Seasons < SiteClimate.SeasonsNeeded)
        {
            string known = Seasons == 1 ? "1 earlier season is known" : $"{Seasons} earlier seasons are known";
            return $"When it will end cannot be said from this site's own past: {known} here, and {SiteClimate.SeasonsNeeded} are needed.";
        }

        bool fromPastBest = window.State == WindowState.Closing && DaysFromPastBestToClose.Count >= SiteClimate.SeasonsNeeded;
        DateOnly start = fromPastBest ? window.PastBest!.Day : window.FirstOpening!.Day;
        IReadOnlyList<double> lasted = fromPastBest ? DaysFromPastBestToClose : DaysToClose;
        DateOnly closes = Earlier(After(start, lasted, day), window.Season.Span.Last);
        string since = fromPastBest ? "after going past its best" : "after opening";
        string range = $"in {Seasons} earlier seasons it closed {lasted.Min():0} to {lasted.Max():0} days {since}";
        return PastBestAbout(window, day) is { } past && past < closes
            ? $"At the usual pace it is past its best from about {Wording.Day(past)} and closes about {Wording.Day(closes)} ({range})."
            : $"At the usual pace it closes about {Wording.Day(closes)} ({range}).";
    }

    /// <summary>The day from which the window is past its best at the usual pace; null where too few earlier seasons are known, or it is so already.</summary>
    public DateOnly? PastBestAbout(Window window, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(window);
        if (window.State != WindowState.Open || window.FirstOpening is not { } opening || DaysToPastBest.Count < SiteClimate.SeasonsNeeded) return null;
        return Earlier(After(opening.Day, DaysToPastBest, day), window.Season.Span.Last);
    }

    /// <summary>The day on which the window closes at the usual pace; null where too few earlier seasons are known.</summary>
    public DateOnly? ClosesAbout(Window window, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(window);
        if (Seasons < SiteClimate.SeasonsNeeded || window.FirstOpening is not { } opening) return null;
        bool fromPastBest = window.State == WindowState.Closing && DaysFromPastBestToClose.Count >= SiteClimate.SeasonsNeeded;
        return Earlier(After(fromPastBest ? window.PastBest!.Day : opening.Day, fromPastBest ? DaysFromPastBestToClose : DaysToClose, day), window.Season.Span.Last);
    }

    private static DateOnly Earlier(DateOnly one, DateOnly two) => one < two ? one : two;

    /// <summary>A day of the future even where the median lies in the past by now.</summary>
    private static DateOnly After(DateOnly start, IReadOnlyList<double> days, DateOnly today)
    {
        DateOnly usual = start.AddDays((int)Math.Round(days.QuantileCustom(0.5, QuantileDefinition.R8)));
        return usual > today ? usual : today.AddDays(1);
    }
}
