using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Changes;

/// <summary>Writes a notice: everything that the mail says, in the reader's units.</summary>
public static class NoticeWriter
{
    /// <summary>How far back filled days are mentioned [days].</summary>
    private const int RemarkedDays = 14;

    /// <summary>The notice of a change of a window.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The kind is not a change of a window's state.</exception>
    public static Notice Write(Window window, NoticeKind kind, Standing standing, SiteMetrics metrics, ReadersUnits units)
    {
        (Transition change, string headline) = kind switch
        {
            NoticeKind.Opened => (window.FirstOpening!, Opened(window, standing)),
            NoticeKind.Closing => (window.PastBest!, $"{window.Site.Name}: {window.Treatment.Name} window past its best since {Wording.Day(window.PastBest!.Day)}"),
            NoticeKind.Closed => (window.LastClosing!, $"{window.Site.Name}: {window.Treatment.Name} window closed on {Wording.Day(window.LastClosing!.Day)}"),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Only the opening, closing and close of a window are told by this notice."),
        };
        bool ended = kind == NoticeKind.Closed;
        bool openedPastBest = kind == NoticeKind.Opened && window.State == WindowState.Closing;
        Because because = openedPastBest ? SeveralBecause.Of([change.Because, window.PastBest!.Because]) : change.Because;
        return new Notice
        {
            Key = new NoticeKey(window.Site.Id, window.Treatment.Id, window.Season.Year, kind),
            AlsoTells = openedPastBest ? [NoticeKind.Closing] : [],
            Day = standing.Day,
            Since = change.Day,
            FoundSo = IsFoundSo(change, standing),
            SiteName = window.Site.Name,
            TreatmentName = window.Treatment.Name,
            Headline = headline,
            Reason = because.Sentence(units),
            Figures = because.Figures(units),
            ExpectedEnd = ended ? "" : Expectation.InWords(window, metrics, standing.Day),
            Do = ended ? [] : window.State == WindowState.Closing && window.Treatment.DoPastBest.Count > 0 ? window.Treatment.DoPastBest : window.Treatment.Do,
            DoNot = ended ? ["Do not start it now: wait for the next season."] : window.Treatment.DoNot,
            Choices = [.. window.Treatment.Excludes.SelectMany(each => new[] { each.Choice, each.NotRecorded })],
            Cautions = ended ? [] : window.Treatment.Cautions,
            DataRemarks = [.. DataRemarks(window, because, ended, standing, metrics)],
        };
    }

    private static string Opened(Window window, Standing standing)
    {
        Transition opening = window.FirstOpening!;
        if (window.State == WindowState.Closing)
        {
            return window.PastBest!.Day == opening.Day
                ? $"{window.Site.Name}: {window.Treatment.Name} window opened late, on {Wording.Day(opening.Day)}, already past its best"
                : $"{window.Site.Name}: {window.Treatment.Name} window open since {Wording.Day(opening.Day)}, past its best since {Wording.Day(window.PastBest.Day)}";
        }

        return IsFoundSo(opening, standing)
            ? $"{window.Site.Name}: {window.Treatment.Name} window open since {Wording.Day(opening.Day)}"
            : $"{window.Site.Name}: {window.Treatment.Name} window opened on {Wording.Day(opening.Day)}";
    }

    private static bool IsFoundSo(Transition change, Standing standing) => change.Day < (standing.WeatherThrough ?? standing.Day);

    private static IEnumerable<string> DataRemarks(Window window, Because because, bool ended, Standing standing, SiteMetrics metrics)
    {
        if (standing.WeatherThrough is { } through && through < standing.Day.AddDays(-1))
        {
            yield return $"It rests on weather up to {Wording.Day(through)}; later days have not come in yet.";
        }

        int filled = metrics.FilledDays(new DateSpan(standing.Day.AddDays(1 - RemarkedDays), standing.Day));
        if (filled > 0) yield return $"{(filled == 1 ? "1 day" : $"{filled} days")} of the last {RemarkedDays} had no weather; the last known day stands in for them.";
        if (!metrics.SoilIsMeasured && because.RestsOnSoil)
        {
            yield return "The soil temperature is estimated from the air, not measured here: a soil thermometer at the lawn is the better witness. Shade, slope and bare soil can move a lawn by a week or more.";
        }

        if (ended) yield break;
        foreach (string untested in window.Treatment.Untested) yield return untested;
    }
}
