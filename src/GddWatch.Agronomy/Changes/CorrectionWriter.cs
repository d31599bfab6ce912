using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Changes;

/// <summary>Writes a correction: what was said, what is known now, and what to do.</summary>
/// <param name="window">The window as it stands now.</param>
/// <param name="due">The correction, with what the reader was told before.</param>
/// <param name="day">The day whose judging found it.</param>
/// <param name="units">The reader's units.</param>
internal sealed class CorrectionWriter(Window window, DueNotice due, DateOnly day, ReadersUnits units)
{
    private readonly Said said = due.Said ?? throw new ArgumentException("A correction needs what was said before.", nameof(due));

    /// <summary>The correction, from a notice of how the window stands now.</summary>
    public Notice Correct(Notice now) => now with
    {
        Headline = $"{window.Site.Name}: correction, {window.Treatment.Name} {NowInShort()}",
        Reason = $"{WhenSaid()} {Wording.List([.. WhatWasSaid()])}. By what is known on {Wording.Day(day)}, {NowInFull()}",
        Do = [.. WhatToDo(now)],
        DoNot = window.IsOpen || window.State == WindowState.Closed ? now.DoNot : [],
        FoundSo = false,
        Facts = [.. Facts()],
    };

    private string WhenSaid() => due.HeldUp is { } heldUp
        ? $"A mail of {Wording.Day(heldUp)}, which was held up on its way and whose place this one takes, said that"
        : $"On {Wording.Day(said.On)} you were told that";

    private string NowInShort()
    {
        if (window.FirstOpening is not { } opening) return "window is not open after all";
        if (window.State == WindowState.Closed) return $"window closed on {Wording.Day(window.Since)}{InsteadOf(said.Closed)}";
        if (Said.Differs(said.Closed, window.LastClosing)) return "window has not closed";
        if (Said.Differs(said.Opened, opening)) return $"window opened on {Wording.Day(opening.Day)}{InsteadOf(said.Opened)}";
        return window.PastBest is { } past ? $"window past its best since {Wording.Day(past.Day)}{InsteadOf(said.PastBest)}" : "window is not past its best";
    }

    private static string InsteadOf(SaidDay? before) => before?.Day is { } then ? $", not on {Wording.DayInYear(then)}" : "";

    private IEnumerable<string> WhatWasSaid()
    {
        if (Said.Differs(said.Opened, window.FirstOpening)) yield return said.Opened!.Day is { } opened ? $"it opened on {Wording.Day(opened)}" : "it had not opened";
        if (Said.Differs(said.PastBest, window.PastBest)) yield return said.PastBest!.Day is { } past ? $"it went past its best on {Wording.Day(past)}" : "it was not past its best";
        if (Said.Differs(said.Closed, window.LastClosing)) yield return said.Closed!.Day is { } closed ? $"it closed on {Wording.Day(closed)}" : "it had not closed";
    }

    private string NowInFull()
    {
        if (window.FirstOpening is not { } opening) return $"it has not opened: {window.Because.Sentence(units)}";
        string opened = $"it opened on {Wording.Day(opening.Day)}: {opening.Because.Sentence(units)}";
        return window.State switch
        {
            WindowState.Closing => $"{opened} It went past its best on {Wording.Day(window.PastBest!.Day)}: {window.PastBest.Because.Sentence(units)}",
            WindowState.Closed => $"{opened} It closed on {Wording.Day(window.Since)}: {window.Transitions[^1].Because.Sentence(units)}",
            _ => opened,
        };
    }

    private IEnumerable<string> WhatToDo(Notice now)
    {
        if (window.IsOpen)
        {
            yield return "The window is open: go by the dates above, not by those told before.";
            foreach (string line in now.Do) yield return line;
        }
        else if (window.State != WindowState.Closed)
        {
            yield return window.FirstOpening is null ? "Wait: do not start it now. You are told again when it opens." : $"Wait for now: {window.Because.Sentence(units)}";
        }

        yield return "Where it was done already on what was told before, record it with its day, so that what follows from it is right.";
    }

    private IEnumerable<ToldFact> Facts()
    {
        yield return new ToldFact(due.KeyOf(window, NoticeKind.Corrected), day);
        if (said.Opened is not null || window.FirstOpening is not null) yield return new ToldFact(due.KeyOf(window, NoticeKind.Opened), window.FirstOpening?.Day);
        if (said.PastBest is not null || window.PastBest is not null) yield return new ToldFact(due.KeyOf(window, NoticeKind.Closing), window.PastBest?.Day);
        if (said.Closed is not null || window.LastClosing is not null) yield return new ToldFact(due.KeyOf(window, NoticeKind.Closed), window.LastClosing?.Day);
    }
}
