using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;

namespace GddWatch.Agronomy.Windows;

/// <summary>
/// What the journal makes of a window. A treatment recorded turns its window to done; a rival recorded makes it held; only what is recorded does either.
/// The course of the weather goes on underneath, so that a window that becomes free stands where it would have stood.
/// </summary>
internal static class Recorded
{
    /// <summary>How far outside its season a treatment still counts as that season's [days].</summary>
    private const int DaysOutsideSeason = 45;

    /// <summary>The window with its journal up to a day.</summary>
    public static Window Apply(Window window, SiteJournal journal, DateOnly day)
    {
        Treatment treatment = window.Treatment;
        TreatmentDone[] own = [.. journal.Done(treatment.Id, day).Where(done => Belongs(done.On, treatment, window))];
        bool mayBeHeld = treatment.Excludes.Any(exclusion => journal.Done(exclusion.Treatment, day).Any());
        if (own.Length == 0 && !mayBeHeld) return window;
        DateOnly first = Earlier(window.Season.Span.First, day);
        if (own.Length > 0) first = Earlier(first, own[0].On);
        var transitions = new List<Transition>();
        for (DateOnly each = first; each <= day; each = each.AddDays(1))
        {
            Transition now = On(each, window, own, journal);
            bool isDoneAgain = now.State == WindowState.Done && transitions.Count > 0 && transitions[^1].Day != now.Day;
            if (transitions.Count == 0 || transitions[^1].State != now.State || isDoneAgain) transitions.Add(now);
        }

        Transition last = On(day, window, own, journal);
        bool byJournal = last.State is WindowState.Done or WindowState.Held;
        return window with
        {
            Transitions = transitions,
            Because = byJournal ? last.Because : window.Because,
            Holds = last.State == WindowState.Held ? Hold.On(treatment, journal, day) : [],
        };
    }

    private static Transition On(DateOnly day, Window window, TreatmentDone[] own, SiteJournal journal)
    {
        Transition course = window.Course.LastOrDefault(transition => transition.Day <= day) ?? window.Course[0];
        if (LastDone(own, day) is { } done && !MayBeDoneAgain(window, done, day)) return new Transition(done.On, WindowState.Done, DoneBecause(window, done));
        if (course.State == WindowState.Closed) return course;
        IReadOnlyList<Hold> holds = Hold.On(window.Treatment, journal, day);
        if (holds.Count > 0) return new Transition(HeldSince(holds, window, day), WindowState.Held, SeveralBecause.Of([.. holds.Select(hold => hold.Because())]));
        // Where a hold or a rest has just ended, the window stands so from this day on; where nothing came between, from its own day.
        bool wasByJournal = day > window.Season.Span.First && IsByJournal(day.AddDays(-1), window, own, journal);
        if (!wasByJournal) return course;
        Because free = new PlainBecause($"What was recorded no longer keeps it from {Wording.Day(day)} on.");
        return new Transition(Later(day, course.Day), course.State, SeveralBecause.Of([free, course.Because]));
    }

    private static bool IsByJournal(DateOnly day, Window window, TreatmentDone[] own, SiteJournal journal) =>
        (LastDone(own, day) is { } done && !MayBeDoneAgain(window, done, day)) || Hold.On(window.Treatment, journal, day).Count > 0;

    private static TreatmentDone? LastDone(TreatmentDone[] own, DateOnly day) => Array.FindLast(own, done => done.On <= day);

    private static bool MayBeDoneAgain(Window window, TreatmentDone done, DateOnly day) =>
        window.Treatment.AgainAfterDays is { } rest && day >= done.On.AddDays(rest);

    private static DateOnly HeldSince(IReadOnlyList<Hold> holds, Window window, DateOnly day)
    {
        DateOnly since = holds.Min(hold => hold.By.On);
        return day <= window.Season.Span.First ? since : Later(since, window.Season.Span.First);
    }

    private static PlainBecause DoneBecause(Window window, TreatmentDone done)
    {
        string what = done.Active.Length > 0 ? $" ({done.Active})" : "";
        string again = window.Treatment.AgainAfterDays is { } rest ? $" It may be done again from {Wording.Day(done.On.AddDays(rest))} on." : "";
        return new PlainBecause($"It is recorded as done on {Wording.Day(done.On)}{what}.{again}");
    }

    /// <summary>Whether a day counts for the window's season: in it, or outside all seasons, near by, and nearer to it than to another.</summary>
    private static bool Belongs(DateOnly day, Treatment treatment, Window window)
    {
        int own = Distance(day, window.Season.Span);
        if (own == 0) return true;
        if (own > DaysOutsideSeason) return false;
        Hemisphere hemisphere = window.Site.Hemisphere;
        return own < Distance(day, treatment.Season.BeginningIn(window.Season.Year - 1, hemisphere).Span)
            && own <= Distance(day, treatment.Season.BeginningIn(window.Season.Year + 1, hemisphere).Span);
    }

    private static int Distance(DateOnly day, DateSpan span) =>
        span.Contains(day) ? 0 : day < span.First ? span.First.DayNumber - day.DayNumber : day.DayNumber - span.Last.DayNumber;

    private static DateOnly Earlier(DateOnly one, DateOnly two) => one < two ? one : two;

    private static DateOnly Later(DateOnly one, DateOnly two) => one > two ? one : two;
}
