using GddWatch.Agronomy.Chances;
using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Weather.Checks;
using GddWatch.Agronomy.Weather.Filling;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Changes;

/// <summary>Writes the notices of a site's windows on a day: everything that the mail says, in the reader's units.</summary>
/// <param name="standing">Where the windows stand.</param>
/// <param name="metrics">The site's weather and journal as of the same day.</param>
/// <param name="region">The local rules, and the units that people read.</param>
/// <param name="daysAhead">What the days ahead may bring.</param>
/// <param name="withCharts">Whether they have charts.</param>
internal sealed class NoticeWriter(Standing standing, SiteMetrics metrics, Region region, DaysAhead daysAhead, bool withCharts = true)
{
    /// <summary>How far back filled days are mentioned [days].</summary>
    private const int RemarkedDays = 14;

    /// <summary>A record of a rival is named for so long, ended or not [days].</summary>
    private const int RecordedLatelyDays = 400;

    private readonly ReadersUnits units = region.Units;

    /// <summary>The notice that is due about a window.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The kind is not about a window's state.</exception>
    public Notice Write(Window window, DueNotice due)
    {
        Notice notice = WriteNow(window, due);
        return due.HeldUp is { } heldUp && due.Kind != NoticeKind.Corrected ? notice with { Reason = $"{notice.Reason} {InPlaceOf(window, due, heldUp)}" } : notice;
    }

    private static string InPlaceOf(Window window, DueNotice due, DateOnly heldUp)
    {
        string opened = due.Kind == NoticeKind.Closed ? $" The window had opened on {Wording.Day(window.FirstOpening!.Day)}." : "";
        return $"A mail of {Wording.Day(heldUp)} about this window was held up on its way and is out of date: this one takes its place.{opened}";
    }

    private Notice WriteNow(Window window, DueNotice due) => due.Kind switch
    {
        NoticeKind.Opened => Opened(window, due),
        NoticeKind.Closing => Change(window, due, window.PastBest!, $"window past its best since {Wording.Day(window.PastBest!.Day)}") with
        {
            Facts = [new ToldFact(due.KeyOf(window, NoticeKind.Closing), window.PastBest.Day)],
        },
        NoticeKind.Closed => Ended(
            Change(window, due, window.LastClosing!, $"window closed on {Wording.Day(window.LastClosing!.Day)}") with
            {
                Facts = [new ToldFact(due.KeyOf(window, NoticeKind.Closed), window.LastClosing.Day)],
            }),
        NoticeKind.Held => Held(window, due),
        NoticeKind.HeadsUp => HeadsUp(window, due, daysAhead.Of(window)!),
        NoticeKind.Corrected => new CorrectionWriter(window, due, standing.Day, units).Correct(
            window.State == WindowState.Closed ? Ended(Change(window, due, window.Transitions[^1], "")) : Change(window, due, window.Transitions[^1], "")),
        _ => throw new ArgumentOutOfRangeException(nameof(due), due.Kind, "Only what happens to a window is told by this notice."),
    };

    /// <summary>How a window stands, changed or not; it is told to nobody.</summary>
    public Notice AsItStands(Window window) => window.State switch
    {
        WindowState.Open => Write(window, new DueNotice(NoticeKind.Opened, 0, null)),
        WindowState.Closing => Write(window, new DueNotice(NoticeKind.Closing, 0, null)),
        WindowState.Closed => Write(window, new DueNotice(NoticeKind.Closed, 0, null)),
        WindowState.Held when window.Holds.Count > 0 => Write(window, new DueNotice(NoticeKind.Held, 0, null)),
        _ => Change(window, new DueNotice(NoticeKind.Opened, 0, null), window.Transitions[^1], $"is {WindowStates.Word(window.State)} since {Wording.Day(window.Since)}"),
    };

    private Notice Opened(Window window, DueNotice due)
    {
        // Where something recorded held it at first, it opened for people on the day it became free.
        // Where it was held or done in between, it is the last such day that counts.
        // In place of a mail that was held up it opened when it opened.
        Transition opening = (due.Revision > 0 && due.HeldUp is null
            ? window.Now(window.Transitions).LastOrDefault(transition => transition.State is WindowState.Open or WindowState.Closing)
            : window.Now(window.Transitions).FirstOrDefault(transition => transition.State == WindowState.Open)) ?? window.FirstOpening!;
        bool isPastBest = window.State == WindowState.Closing;
        Because because = isPastBest ? SeveralBecause.Of([opening.Because, window.PastBest!.Because]) : opening.Because;
        var opened = new ToldFact(due.KeyOf(window, NoticeKind.Opened), window.FirstOpening!.Day);
        return Change(window, due, opening with { Because = because }, OpenedHeadline(window, opening)) with
        {
            Facts = isPastBest ? [opened, new ToldFact(due.KeyOf(window, NoticeKind.Closing), window.PastBest!.Day)] : [opened],
        };
    }

    private Notice HeadsUp(Window window, DueNotice due, WindowChances ahead) => Change(window, due, window.Transitions[^1], $"is {ChancesWords.Likely(ahead)}") with
    {
        Since = standing.Day,
        FoundSo = false,
        Reason = $"{Moved(due, ahead)}The chance that it opens within {Wording.Days(window.Treatment.HeadsUp.WithinDays)} is {ChancesWords.Percent(ahead.Within(window.Treatment.HeadsUp.WithinDays))}, judged by {ChancesWords.Basis(ahead)}. {window.Because.Sentence(units)}",
        Figures = [.. ChanceFigures(ahead), .. window.Because.Figures(units)],
        ExpectedEnd = "",
        Do = [$"Get ready: plan it, and have at hand what it needs. It is {ChancesWords.Likely(ahead)}.", "You are told when it opens."],
        DoNot = ["Do not start it now: the window is not open yet.", .. window.Treatment.DoNot],
        DataRemarks = [.. ahead.Remarks, .. DataRemarks(window.Because), .. window.Treatment.Untested],
        Chart = withCharts ? NoticeCharts.Of(window, window.Because, metrics, standing.Day, units, new DateSpan(ahead.Earliest, ahead.Latest ?? window.Season.Span.Last)) : null,
        Facts = [new ToldFact(due.KeyOf(window, NoticeKind.HeadsUp), ahead.Median)],
    };

    private static string Moved(DueNotice due, WindowChances ahead) => due.Moved is { Fact: { } then } before
        ? $"This has moved: on {Wording.Day(before.Day)} an even chance was told for {Wording.DayInYear(then)}, and now it is for {Wording.DayInYear(ahead.Median!.Value)}. "
        : "";

    private static IEnumerable<Figure> ChanceFigures(WindowChances ahead)
    {
        yield return new Figure("About eight chances in ten that it opens", ChancesWords.Range(ahead), "");
        if (ahead.Median is { } median) yield return new Figure("Even chance that it has opened by", Wording.Day(median), "");
        yield return new Figure("Chance that it opens within 7 days", ChancesWords.Percent(ahead.Within(7)), "");
        yield return new Figure("Chance that it opens within 14 days", ChancesWords.Percent(ahead.Within(14)), "");
        yield return new Figure("Chance that it does not open this season", ChancesWords.Percent(ahead.NotAtAll), "");
    }

    private Notice Held(Window window, DueNotice due)
    {
        DateOnly free = window.Holds.Max(hold => hold.FreeFrom);
        return Change(window, due, window.Transitions[^1], $"is held, until {Wording.Day(free)} at the latest") with
        {
            ExpectedEnd = "",
            Do = [$"Wait: {window.Because.Sentence(units)}"],
            Facts = [new ToldFact(due.KeyOf(window, NoticeKind.Held), window.Since)],
        };
    }

    private Notice Change(Window window, DueNotice due, Transition change, string headline)
    {
        var expectation = new Expectation(window, metrics, window.IsOpen ? daysAhead : DaysAhead.Unknown, standing.Day);
        bool restsOnDaysAhead = window.IsOpen && !expectation.IsOfCalendar && daysAhead.Of(window) is not null;
        return new Notice
        {
            Key = due.KeyOf(window, due.Kind),
            Day = standing.Day,
            Since = change.Day,
            FoundSo = IsFoundSo(change),
            SiteName = window.Site.Name,
            TreatmentName = window.Treatment.Name,
            Headline = $"{window.Site.Name}: {window.Treatment.Name} {headline}",
            Reason = change.Because.Sentence(units),
            Figures = change.Because.Figures(units),
            ExpectedEnd = window.IsOpen ? expectation.InWords() : "",
            Do = window.State == WindowState.Closing && window.Treatment.DoPastBest.Count > 0 ? window.Treatment.DoPastBest : window.Treatment.Do,
            DoNot = window.Treatment.DoNot,
            Choices = [.. ChoicesToMake(window), .. window.Treatment.Excludes.SelectMany(exclusion => WhatIsKnown(window, exclusion)).Distinct(StringComparer.Ordinal)],
            Cautions = [.. RulesNotChecked(window), .. window.Treatment.Cautions],
            DataRemarks = [.. restsOnDaysAhead ? daysAhead.Remarks : [], .. DataRemarks(change.Because), .. window.State == WindowState.Closed ? [] : window.Treatment.Untested],
            Entry = CalendarEntries.Of(window, expectation, standing.Day, due.Said?.Opened?.Day),
            Chart = withCharts ? NoticeCharts.Of(window, change.Because, metrics, standing.Day, units) : null,
        };
    }

    private static Notice Ended(Notice notice) => notice with
    {
        Do = [],
        DoNot = ["Do not start it now: wait for the next season."],
        Cautions = [],
        ExpectedEnd = "",
    };

    private string OpenedHeadline(Window window, Transition opening)
    {
        if (window.State == WindowState.Closing)
        {
            return window.PastBest!.Day <= opening.Day
                ? $"window opened late, on {Wording.Day(opening.Day)}, already past its best"
                : $"window open since {Wording.Day(opening.Day)}, past its best since {Wording.Day(window.PastBest.Day)}";
        }

        return IsFoundSo(opening) ? $"window open since {Wording.Day(opening.Day)}" : $"window opened on {Wording.Day(opening.Day)}";
    }

    private bool IsFoundSo(Transition change) => change.Day < (standing.WeatherThrough ?? standing.Day);

    /// <summary>The choices between this and others that forbid each other: those whose season it is, or else the first of all, so that the mail stays short.</summary>
    private IEnumerable<string> ChoicesToMake(Window window)
    {
        Exclusion[] now = [.. window.Treatment.Excludes.Where(exclusion => standing.Windows.Any(other => other.Treatment.Id == exclusion.Treatment && other.Season.Span.Contains(standing.Day)))];
        return (now.Length > 0 ? now : window.Treatment.Excludes.Take(1)).Select(exclusion => exclusion.Choice);
    }

    /// <summary>What is known of a treatment that forbids this one. What is not recorded is unknown, never clear.</summary>
    private IEnumerable<string> WhatIsKnown(Window window, Exclusion exclusion)
    {
        TreatmentDone? done = metrics.Journal.LastDone(exclusion.Treatment, standing.Day);
        if (done is not null && standing.Day.DayNumber - done.On.DayNumber <= RecordedLatelyDays)
        {
            yield return $"{exclusion.Name} is recorded for {Wording.Day(done.On)}; by the record it no longer forbids this. The label decides.";
        }
        else
        {
            yield return $"Unknown: {exclusion.NotRecorded}";
        }

        if (window.Site.Prefers.Contains(window.Treatment.Id)) yield return $"This site prefers {window.Treatment.Name} over {exclusion.Name}.";
        else if (window.IsOpen && standing.Windows.FirstOrDefault(other => other.Treatment.Id == exclusion.Treatment) is { IsOpen: true } rival)
        {
            yield return $"Both are open here now: {exclusion.Name} since {Wording.Day(rival.Since)}.";
        }
    }

    private IEnumerable<string> RulesNotChecked(Window window)
    {
        if (window.Treatment.Work is not (WorkKind.Feeding or WorkKind.Watering) || region.RulesAbout(window.Site, window.Treatment.Work).Any()) yield break;
        string word = WorkKinds.Word(window.Treatment.Work.Value);
        yield return $"Local rules on {word} were not checked: none is configured for {window.Site.Name}. Look them up first; they come before this timing.";
    }

    /// <summary>By what means the latest holes were filled, with the largest error of each.</summary>
    private string FilledBy()
    {
        string[] means =
        [
            .. metrics.Weather.Fillings.Where(filling => filling.Day > standing.Day.AddDays(-RemarkedDays)).GroupBy(filling => filling.Rung)
                .Select(rung => $"{FillingRungs.Words(rung.Key)} (give or take {Wording.TemperatureDifference(rung.Max(filling => filling.ErrorC), region.Units)})"),
        ];
        return means.Length > 0 ? Wording.List(means) : "nothing";
    }

    private IEnumerable<string> DataRemarks(Because because)
    {
        if (standing.WeatherThrough is { } through && through < standing.Day.AddDays(-1))
        {
            yield return $"It rests on weather up to {Wording.Day(through)}; later days have not come in yet.";
        }

        int filled = metrics.FilledDays(new DateSpan(standing.Day.AddDays(1 - RemarkedDays), standing.Day));
        if (filled > 0) yield return $"{Wording.Days(filled)} of the last {RemarkedDays} had no weather that can be relied on, filled by {FilledBy()}.";
        foreach (Doubt doubt in metrics.Weather.Doubts.Where(doubt => doubt.Day > standing.Day.AddDays(-RemarkedDays)))
        {
            yield return $"The {(doubt.Variable == WeatherVariable.MinimumAirC ? "lowest" : "highest")} temperature read on {Wording.Day(doubt.Day)} is doubted and not used.";
        }

        if (!metrics.SoilIsMeasured && because.RestsOnSoil)
        {
            yield return "The soil temperature is estimated from the air, not measured here: a soil thermometer at the lawn is the better witness. Shade, slope and bare soil can move a lawn by a week or more.";
        }
    }
}
