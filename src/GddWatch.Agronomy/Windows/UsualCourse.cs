using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using MathNet.Numerics.Statistics;

namespace GddWatch.Agronomy.Windows;

/// <summary>How a window has gone in earlier seasons at the same site: what to expect of this one.</summary>
/// <param name="Seasons">How many earlier seasons opened and ended.</param>
/// <param name="PastBest">The median day on which it went past its best, put into this season; null where it is not known or never did.</param>
/// <param name="Closed">The median day on which it closed, put into this season; null where it is not known.</param>
/// <param name="EarliestClosed">The earliest closing, put into this season.</param>
/// <param name="LatestClosed">The latest closing, put into this season.</param>
public sealed record UsualCourse(int Seasons, DateOnly? PastBest, DateOnly? Closed, DateOnly? EarliestClosed, DateOnly? LatestClosed)
{
    /// <summary>
    /// The usual course from the seasons before a window's own, each judged by the same code; dates only where there are at least
    /// <see cref="SiteClimate.SeasonsNeeded"/>. Median of type 8 after Hyndman &amp; Fan 1996, Am. Stat. 50:361-365 (SEEN).
    /// </summary>
    public static UsualCourse Before(Window window, SiteMetrics metrics)
    {
        var pastBest = new List<double>();
        var closed = new List<double>();
        for (int year = metrics.Series.FirstDay.Year; year < window.Season.Year; year++)
        {
            Season season = window.Treatment.Season.BeginningIn(year, metrics.Site.Hemisphere);
            Window earlier = WindowJudge.JudgeSeason(window.Treatment, metrics, season, season.Span.Last);
            if (earlier.LastClosing is not { } closing) continue;
            closed.Add(closing.Day.DayNumber - season.Span.First.DayNumber);
            if (earlier.PastBest is { } past) pastBest.Add(past.Day.DayNumber - season.Span.First.DayNumber);
        }

        return closed.Count < SiteClimate.SeasonsNeeded
            ? new UsualCourse(closed.Count, null, null, null, null)
            : new UsualCourse(
                closed.Count,
                pastBest.Count < SiteClimate.SeasonsNeeded ? null : Median(pastBest, window.Season),
                Median(closed, window.Season),
                InSeason(closed.Min(), window.Season),
                InSeason(closed.Max(), window.Season));
    }

    /// <summary>What to expect, in words, as of a day.</summary>
    public string InWords(WindowState state, DateOnly day)
    {
        if (Closed is not { } closed)
        {
            return $"When it will end cannot be said from this site's own past: {(Seasons == 1 ? "1 earlier season is" : $"{Seasons} earlier seasons are")} known here, and {SiteClimate.SeasonsNeeded} are needed.";
        }

        string range = $"in {Seasons} earlier seasons it closed between {Wording.DayInYear(EarliestClosed!.Value)} and {Wording.DayInYear(LatestClosed!.Value)}";
        if (closed <= day) return $"It has usually closed by now: {range}.";
        string close = $"closes about {Wording.Day(closed)}";
        if (state != WindowState.Open || PastBest is not { } past || past >= closed) return $"It usually {close} (median; {range}).";
        return past > day
            ? $"It usually is past its best from about {Wording.Day(past)} and {close} (medians; {range})."
            : $"Its best days are usually over by now, from about {Wording.Day(past)} on, and it {close} (medians; {range}).";
    }

    private static DateOnly Median(List<double> offsets, Season season) => InSeason(offsets.QuantileCustom(0.5, QuantileDefinition.R8), season);

    private static DateOnly InSeason(double offset, Season season) => season.Span.First.AddDays((int)Math.Round(offset));
}
