using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Treatments.Conditions;

namespace GddWatch.Agronomy.Windows;

/// <summary>
/// Judges windows. The one judging code of the live service, replay and backtest: a window on a day is a pure function of the treatment, the site and the
/// days up to that one.
/// </summary>
public static class WindowJudge
{
    /// <summary>After how many days without weather a waiting window is unknown [days].</summary>
    public const int StaleAfterDays = 3;

    /// <summary>How late after a season's start the weather may begin for the season still to be judged [days].</summary>
    public const int LateStartDays = 10;

    /// <summary>Where every window of a site stands on a day.</summary>
    /// <param name="treatments">The treatments; those that are not for the site's turf are left out.</param>
    /// <param name="metrics">The site's weather; days after <paramref name="day"/> must not be in it.</param>
    /// <param name="day">The day.</param>
    public static Standing Judge(IReadOnlyList<Treatment> treatments, SiteMetrics metrics, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(treatments);
        ArgumentNullException.ThrowIfNull(metrics);
        var windows = new List<Window>();
        var ended = new List<Window>();
        foreach (Treatment treatment in treatments.Where(treatment => treatment.IsFor(metrics.Site)))
        {
            Season season = treatment.Season.AtOrAfter(day, metrics.Site.Hemisphere);
            Season before = treatment.Season.BeginningIn(season.Year - 1, metrics.Site.Hemisphere);
            windows.Add(JudgeSeason(treatment, metrics.For(season), season, day));
            ended.Add(JudgeSeason(treatment, metrics.For(before), before, day));
        }

        return new Standing(metrics.Site.Id, day, metrics.WeatherThrough, windows, ended);
    }

    /// <summary>The windows of a site without any weather: all unknown, for a reason given in a sentence, but for what was recorded.</summary>
    public static Standing JudgeWithoutWeather(IReadOnlyList<Treatment> treatments, Site site, SiteJournal journal, DateOnly day, string why)
    {
        Window[] windows = [.. treatments.Where(treatment => treatment.IsFor(site)).Select(treatment =>
        {
            var because = new PlainBecause(why);
            var unjudged = new Window
            {
                Site = site,
                Treatment = treatment,
                Season = treatment.Season.AtOrAfter(day, site.Hemisphere),
                Transitions = [new Transition(day, WindowState.Unknown, because)],
                Course = [new Transition(day, WindowState.Unknown, because)],
                Because = because,
            };
            return Recorded.Apply(unjudged, journal, day);
        })];
        return new Standing(site.Id, day, null, windows, []);
    }

    /// <summary>One window in one season as known on a day.</summary>
    public static Window JudgeSeason(Treatment treatment, SiteMetrics metrics, Season season, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(treatment);
        ArgumentNullException.ThrowIfNull(metrics);
        DateOnly through = Earliest(day, season.Span.Last, metrics.Series.LastDay);
        var course = new Course(treatment, new SeasonView(metrics, season), season.Span.First, through);
        if (day < season.Span.First)
        {
            course.Become(season.Span.First, WindowState.Waiting, new PlainBecause($"Its season begins on {Wording.Day(season.Span.First)}."));
        }
        else if (metrics.Series.FirstDay > season.Span.First.AddDays(LateStartDays))
        {
            course.Become(season.Span.First, WindowState.Unknown, new PlainBecause($"The weather of {metrics.Site.Name} begins on {Wording.Day(metrics.Series.FirstDay)}, after the season began on {Wording.Day(season.Span.First)}."));
        }
        else
        {
            for (DateOnly each = season.Span.First; each <= through && !course.HasEnded; each = course.NextAfter(each)) course.Step(each);
            course.SettleAsOf(day, through);
        }

        return Recorded.Apply(course.ToWindow(), metrics.Journal, day);
    }

    /// <summary>Whether a season can be judged, and is not over on a day.</summary>
    internal static bool GoesOn(SiteMetrics metrics, Season season, DateOnly day) => metrics.Series.FirstDay <= season.Span.First.AddDays(LateStartDays) && day < season.Span.Last;

    /// <summary>The way of a window up to a day, from which it goes on through futures; its season must go on (<see cref="GoesOn"/>).</summary>
    /// <param name="treatment">The treatment.</param>
    /// <param name="metrics">The weather up to the day.</param>
    /// <param name="season">The season.</param>
    /// <param name="day">The day.</param>
    internal static Onward OnwardFrom(Treatment treatment, SiteMetrics metrics, Season season, DateOnly day)
    {
        DateOnly through = Earliest(day, season.Span.Last, metrics.Series.LastDay);
        var course = new Course(treatment, new SeasonView(metrics, season), season.Span.First, through);
        for (DateOnly each = season.Span.First; each <= through; each = course.NextAfter(each)) course.Step(each);
        return new Onward(course, season, metrics.Series.LastDay.AddDays(1));
    }

    /// <summary>A window on its way, which each future takes on from the same day.</summary>
    internal sealed class Onward
    {
        private readonly Course course;
        private readonly Season season;
        private readonly DateOnly next;

        internal Onward(Course course, Season season, DateOnly next)
        {
            this.course = course;
            this.season = season;
            this.next = next > season.Span.First ? next : season.Span.First;
        }

        /// <summary>The first day of a future on which it stands open; null where it does not open any more this season.</summary>
        public DateOnly? Opens(SiteMetrics future) => First(future, state => state is WindowState.Open or WindowState.Closing);

        /// <summary>The first day of a future on which it is closed: the season's last one at the latest; null where the future ends before that.</summary>
        public DateOnly? Closes(SiteMetrics future) => First(future, state => state is WindowState.Closed) ?? (future.Series.LastDay >= season.Span.Last ? season.Span.Last : null);

        private DateOnly? First(SiteMetrics future, Func<WindowState, bool> isIt)
        {
            DateOnly last = season.Span.Last < future.Series.LastDay ? season.Span.Last : future.Series.LastDay;
            Course way = course.In(future, next, last);
            for (DateOnly day = next; day <= last; day = way.NextAfter(day))
            {
                way.Step(day);
                if (way.Now is { } state && isIt(state)) return day;
            }

            return null;
        }
    }

    private static DateOnly Earliest(DateOnly one, DateOnly two, DateOnly three)
    {
        DateOnly earlier = one < two ? one : two;
        return earlier < three ? earlier : three;
    }

    private static readonly PlainBecause ForNow = new("It waits for now.");

    /// <summary>The way of one window through its season, day by day.</summary>
    /// <param name="treatment">The treatment.</param>
    /// <param name="view">The season.</param>
    /// <param name="first">The first of the days that it goes through.</param>
    /// <param name="last">The last of them; before the first where there is none.</param>
    internal sealed class Course(Treatment treatment, SeasonView view, DateOnly first, DateOnly last)
    {
        private readonly List<Transition> transitions = [];
        private Because? latest;

        // The day on which it last stayed as it was: a reason is made only where it is the last one.
        private DateOnly? stayedOn;
        private readonly string[] needed = view.Metrics.Journal.IsEmpty ? [] : [.. treatment.Opens.NeededRecords];
        private bool isPaused;
        private DateOnly? begunAnew;

        // The verdicts of all its days, each made when the first of them is asked for.
        private Verdict[]? closedVerdicts, pausedVerdicts, opensVerdicts, closingVerdicts;

        /// <summary>Whether what closes the window has been otherwise on a day of the season.</summary>
        private bool wasOtherwise;

        /// <summary>The same way, to be gone on in a future.</summary>
        public Course In(SiteMetrics future, DateOnly from, DateOnly until)
        {
            var copy = new Course(treatment, view.In(future), from, until) { isPaused = isPaused, begunAnew = begunAnew, wasOtherwise = wasOtherwise, latest = latest, stayedOn = stayedOn };
            copy.transitions.AddRange(transitions);
            copy.State = State;
            return copy;
        }

        /// <summary>The state as it stands.</summary>
        public WindowState? Now => State;

        /// <summary>Whether no day after can change anything: it is closed, and follows no record that would begin it anew.</summary>
        public bool HasEnded => State is WindowState.Closed && needed.Length == 0;

        private WindowState? State { get; set; }

        public void Step(DateOnly day)
        {
            bool anew = BeginsAnew(day);
            if (State is WindowState.Closed && !anew) return;
            bool opened = !anew && (isPaused || State is WindowState.Open or WindowState.Closing);
            if (treatment.Closed is { } closed && Closes(closed, day, opened))
            {
                Become(day, WindowState.Closed, opened ? closed.Why(view, day) : SeveralBecause.Of([NeverOpened(), closed.Why(view, day)]));
                return;
            }

            if (treatment.Paused is { } paused && On(paused, ref pausedVerdicts, day) == Verdict.Yes && (opened || OpensOn(day) == Verdict.Yes))
            {
                isPaused = opened;
                Become(day, WindowState.Waiting, new WhyLater(paused, view, day, ForNow));
                return;
            }

            if (isPaused) Resume(day);
            else if (!opened && !(anew && State is WindowState.Waiting)) opened = TryToOpen(day);
            if (opened && State == WindowState.Open && treatment.Closing is { } closing && On(closing, ref closingVerdicts, day) == Verdict.Yes)
            {
                Become(day, WindowState.Closing, closing.Why(view, day));
            }
        }

        /// <summary>The next day on which a step may change anything; the days between are gone past.</summary>
        public DateOnly NextAfter(DateOnly day)
        {
            DateOnly next = day.AddDays(1);
            // A record may begin it anew on any day.
            if (needed.Length > 0 || isPaused || next > last) return next;
            int quiet = State switch
            {
                WindowState.Waiting => Quiet(next, Verdict.No),
                WindowState.Unknown => Quiet(next, Verdict.Unknown),
                WindowState.Open or WindowState.Closing => QuietWhileOpen(next),
                _ => 0,
            };
            if (quiet == 0) return next;
            wasOtherwise |= treatment.Closed is not null;
            DateOnly then = next.AddDays(quiet);
            if (State is WindowState.Waiting or WindowState.Unknown) stayedOn = then.AddDays(-1);
            return then;
        }

        // On how many days what opens it says the same, and nothing closes it.
        private int Quiet(DateOnly next, Verdict same)
        {
            if (opensVerdicts is null || (treatment.Closed is not null && closedVerdicts is null)) return 0;
            int from = next.DayNumber - first.DayNumber;
            int quiet = Before(opensVerdicts.AsSpan(from).IndexOfAnyExcept(same), opensVerdicts.Length - from);
            return BeforeYes(closedVerdicts, from, quiet);
        }

        // On how many days nothing closes or pauses it, and it is not past its best either.
        private int QuietWhileOpen(DateOnly next)
        {
            bool closingMatters = State is WindowState.Open && treatment.Closing is not null;
            if ((treatment.Closed is not null && closedVerdicts is null) || (treatment.Paused is not null && pausedVerdicts is null) || (closingMatters && closingVerdicts is null)) return 0;
            int from = next.DayNumber - first.DayNumber;
            int quiet = BeforeYes(closedVerdicts, from, last.DayNumber - first.DayNumber + 1 - from);
            quiet = BeforeYes(pausedVerdicts, from, quiet);
            return closingMatters ? BeforeYes(closingVerdicts, from, quiet) : quiet;
        }

        private static int BeforeYes(Verdict[]? verdicts, int from, int days) => verdicts is null ? days : Before(verdicts.AsSpan(from, days).IndexOf(Verdict.Yes), days);

        private static int Before(int found, int days) => found < 0 ? days : found;

        /// <summary>Whether a new record of what it follows begins it anew on a day: one that it had closed on, or that takes from it what opened it.</summary>
        private bool BeginsAnew(DateOnly day)
        {
            if (needed.Length == 0) return false;
            bool closed = State is WindowState.Closed;
            if (!closed && !isPaused && State is not (WindowState.Open or WindowState.Closing)) return false;
            if (view.Metrics.Journal.LastOn(needed, day) is not { } record) return false;
            bool isMet = OpensOn(day) == Verdict.Yes;
            if (closed ? treatment.Closed is { } closes && On(closes, ref closedVerdicts, day) == Verdict.Yes : isMet && State is WindowState.Open) return false;
            isPaused = false;
            wasOtherwise = false;
            begunAnew = day;
            if (!isMet) Become(day, WindowState.Waiting, SeveralBecause.Of([new PlainBecause($"It begins anew with what was recorded for {Wording.Day(record.On)}."), treatment.Opens.Why(view, day)]));
            return true;
        }

        private Verdict OpensOn(DateOnly day) => On(treatment.Opens, ref opensVerdicts, day);

        private Verdict On(Condition condition, ref Verdict[]? verdicts, DateOnly day)
        {
            if (verdicts is null)
            {
                verdicts = new Verdict[last.DayNumber - first.DayNumber + 1];
                condition.Judge(view, first, verdicts);
            }

            return verdicts[day.DayNumber - first.DayNumber];
        }

        private bool Closes(Condition closed, DateOnly day, bool opened)
        {
            bool isSo = On(closed, ref closedVerdicts, day) == Verdict.Yes;
            wasOtherwise |= !isSo;
            return isSo && (opened || wasOtherwise || !closed.IsLevel);
        }

        private void Resume(DateOnly day)
        {
            isPaused = false;
            Transition before = transitions.Last(transition => transition.State is WindowState.Open or WindowState.Closing);
            Become(day, before.State, OpensOn(day) == Verdict.Yes ? treatment.Opens.Why(view, day) : before.Because);
        }

        /// <summary>What the end of the season, or the lack of fresh weather, makes of the state.</summary>
        public void SettleAsOf(DateOnly day, DateOnly through)
        {
            DateOnly end = view.Season.Span.Last;
            bool over = day > end || (day == end && through == end);
            if (over && State is not WindowState.Closed)
            {
                string stopped = through < end ? $" The weather stopped on {Wording.Day(through)}, before it ended." : "";
                Because ended = new PlainBecause($"Its season ran until {Wording.Day(end)}.{stopped}");
                Become(end, WindowState.Closed, isPaused || State is WindowState.Open or WindowState.Closing ? ended : SeveralBecause.Of([NeverOpened(), ended]));
                return;
            }

            // The season has begun, and its first day's weather has not come in yet.
            if (transitions.Count == 0) Become(view.Season.Span.First, WindowState.Waiting, new PlainBecause("No weather of its season has come in yet."));
            DateOnly? known = view.Metrics.WeatherThrough;
            int age = known is { } weather ? day.DayNumber - weather.DayNumber : int.MaxValue;
            if (age <= StaleAfterDays || State is WindowState.Closed) return;
            if ((isPaused || State is WindowState.Open or WindowState.Closing) && treatment.Closed?.KnownDay(view)?.Day is { } closes && closes <= day)
            {
                // A close that the calendar sets comes without weather too.
                Become(closes, WindowState.Closed, treatment.Closed.Why(view, closes));
                return;
            }

            string before = State is WindowState.Open or WindowState.Closing ? $" It was {WindowStates.Word(State.Value)} then, since {Wording.Day(transitions[^1].Day)}." : "";
            string since = known is { } lastKnown ? $"The last weather is from {Wording.Day(lastKnown)}, {Wording.Days(age)} before.{before}" : "There is no weather yet.";
            Become(known ?? view.Season.Span.First, WindowState.Unknown, new PlainBecause(since));
        }

        public void Become(DateOnly day, WindowState state, Because because)
        {
            latest = because;
            stayedOn = null;
            if (State == state) return;
            State = state;
            transitions.Add(new Transition(day, state, because));
        }

        public Window ToWindow() => new()
        {
            Site = view.Metrics.Site,
            Treatment = treatment,
            Season = view.Season,
            Transitions = transitions,
            Course = transitions,
            BegunAnew = begunAnew,
            Because = (stayedOn is { } stayed ? new WhyLater(treatment.Opens, view, stayed, null) : latest) ?? new PlainBecause("Nothing is known yet."),
        };

        private bool TryToOpen(DateOnly day)
        {
            Verdict verdict = OpensOn(day);
            if (verdict == Verdict.Yes && view.Metrics.IsFilled(day))
            {
                // A filled day repeats the day before it; a window opens on weather that came.
                Become(day, State ?? WindowState.Waiting, new PlainBecause($"Its conditions are met, but the weather of {Wording.Day(day)} is missing and was filled: it opens once a day with weather confirms it."));
                return false;
            }

            WindowState state = verdict switch
            {
                Verdict.Yes => WindowState.Open,
                Verdict.No => WindowState.Waiting,
                _ => WindowState.Unknown,
            };
            // The sentence for a state that stays is made only for the last day asked about.
            if (State != state) Become(day, state, WhyNow(state, day));
            else stayedOn = day;
            return state == WindowState.Open;
        }

        private Because NeverOpened() => State == WindowState.Unknown
            ? SeveralBecause.Of([new PlainBecause($"It could not be judged from {Wording.Day(transitions[^1].Day)} on."), transitions[^1].Because])
            : new PlainBecause("It did not open this season.");

        private Because WhyNow(WindowState state, DateOnly day)
        {
            Because why = treatment.Opens.Why(view, day);
            bool afterUnknown = state == WindowState.Open && State == WindowState.Unknown;
            return afterUnknown
                ? SeveralBecause.Of([why, new PlainBecause($"It may have opened earlier: too little was known from {Wording.Day(transitions[^1].Day)} on.")])
                : why;
        }
    }
}
