using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Treatments;

namespace GddWatch.Agronomy.Windows;

/// <summary>A treatment at a site in one season, as known on a day.</summary>
public sealed record Window
{
    /// <summary>The site.</summary>
    public required Site Site { get; init; }

    /// <summary>The treatment.</summary>
    public required Treatment Treatment { get; init; }

    /// <summary>The season.</summary>
    public required Season Season { get; init; }

    /// <summary>Its changes in order, with what was recorded about it; the first is its state when the season began.</summary>
    public required IReadOnlyList<Transition> Transitions { get; init; }

    /// <summary>Its changes in order by the weather and the date alone, as if nothing had been recorded. Openings and closings below go by it.</summary>
    public required IReadOnlyList<Transition> Course { get; init; }

    /// <summary>
    /// The day of the record that began it anew, where it follows a treatment that was recorded again after it had opened or closed; null where none did.
    /// Openings and closings below are those since then: what came before belongs to the earlier record.
    /// </summary>
    public DateOnly? BegunAnew { get; init; }

    /// <summary>What holds it on the day asked about; empty where nothing recorded does.</summary>
    public IReadOnlyList<Hold> Holds { get; init; } = [];

    /// <summary>The reason as of the day asked about.</summary>
    public required Because Because { get; init; }

    /// <summary>Its state on the day asked about.</summary>
    public WindowState State => Transitions[^1].State;

    /// <summary>Since when it is in that state.</summary>
    public DateOnly Since => Transitions[^1].Day;

    /// <summary>Whether it stands open, past its best or not.</summary>
    public bool IsOpen => State is WindowState.Open or WindowState.Closing;

    /// <summary>Those of some changes that came since it began anew; all of them where it did not.</summary>
    public IEnumerable<Transition> Now(IEnumerable<Transition> changes) => BegunAnew is { } anew ? changes.Where(change => change.Day >= anew) : changes;

    /// <summary>Its first opening this season, or null.</summary>
    public Transition? FirstOpening => Now(Course).FirstOrDefault(transition => transition.State == WindowState.Open);

    /// <summary>Whether too little was known just before the first opening, so that it may really have opened earlier.</summary>
    public bool MayHaveOpenedEarlier =>
        FirstOpening is { } opening && Now(Course).TakeWhile(transition => transition != opening).LastOrDefault()?.State == WindowState.Unknown;

    /// <summary>Whether it never opened as far as is known, because too little was known to judge it to the end.</summary>
    public bool CouldNotBeJudged =>
        FirstOpening is null && Now(Course).LastOrDefault(transition => transition.State != WindowState.Closed)?.State == WindowState.Unknown;

    /// <summary>How often it opened again after its first opening.</summary>
    public int Reopenings => Math.Max(0, Course.Count(transition => transition.State == WindowState.Open) - 1);

    /// <summary>The day it went past its best, or null.</summary>
    public Transition? PastBest => Now(Course).FirstOrDefault(transition => transition.State == WindowState.Closing);

    /// <summary>Its last closing after an opening, or null.</summary>
    public Transition? LastClosing =>
        FirstOpening is null ? null : Now(Course).LastOrDefault(transition => transition.State == WindowState.Closed);

    /// <summary>The same window with every reason made now, so that the weather behind it can be let go: a backtest holds hundreds of thousands.</summary>
    public Window WithReasonsMade()
    {
        Transition[] course = [.. Course.Select(change => change with { Because = change.Because.Made() })];
        return this with
        {
            Course = course,
            Transitions = ReferenceEquals(Transitions, Course) ? course : [.. Transitions.Select(change => change with { Because = change.Because.Made() })],
            Because = Because.Made(),
        };
    }
}
