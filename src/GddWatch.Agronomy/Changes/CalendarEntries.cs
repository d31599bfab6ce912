using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Changes;

/// <summary>Makes the calendar entries of windows.</summary>
internal static class CalendarEntries
{
    /// <summary>How long a window is entered for where its end is not known and cannot be expected [days]. DESIGN: about what the shorter windows of a lawn year last.</summary>
    private const int UsualLengthDays = 21;

    /// <summary>An open window whose entered length has passed goes on for so long from today [days].</summary>
    private const int GoesOnDays = 7;

    /// <summary>The entry of a window as it stands; null where it neither opened nor was told to have.</summary>
    /// <param name="window">The window.</param>
    /// <param name="expectation">When it is expected to end.</param>
    /// <param name="day">The day.</param>
    /// <param name="toldOpening">The opening that a reader was told of before, to be withdrawn where there is none now.</param>
    public static CalendarEntry? Of(Window window, Expectation expectation, DateOnly day, DateOnly? toldOpening = null)
    {
        DateOnly? opening = window.FirstOpening is null ? toldOpening : OpeningForPeople(window);
        if (opening is not { } first) return null;
        if (window.FirstOpening is null) return Entry(first, first, "It is withdrawn: the window has not opened.", isWithdrawn: true);
        if (window.State == WindowState.Held) return Entry(first, day, "It is withdrawn: something recorded holds it.", isWithdrawn: true);
        if (window.State == WindowState.Done) return Entry(first, window.Since.AddDays(1), $"It is recorded as done for {Wording.Day(window.Since)}.");
        if (window.LastClosing is { } closing && window.State == WindowState.Closed) return Entry(first, closing.Day, $"It closed on {Wording.Day(closing.Day)}.");
        DateOnly seasonEnd = window.Season.Span.Last.AddDays(1);
        if (expectation.Close is { } expected) return Entry(first, expected, expectation.IsOfCalendar ? expectation.InWords() : $"The end is expected, not known. {expectation.InWords()}");
        DateOnly usual = first.AddDays(UsualLengthDays);
        if (usual <= day) usual = day.AddDays(GoesOnDays);
        return Entry(first, usual < seasonEnd ? usual : seasonEnd, $"When it ends is not known: {Wording.Days(UsualLengthDays)} are entered at first, and a later message corrects them.");
    }

    private static CalendarEntry Entry(DateOnly first, DateOnly end, string endWords, bool isWithdrawn = false) =>
        new(0, first, end > first ? end : first.AddDays(1), endWords, isWithdrawn);

    /// <summary>What was recorded may have held it when it opened by the weather: for people it opened on the day on which it was free.</summary>
    private static DateOnly OpeningForPeople(Window window) =>
        window.Now(window.Transitions).FirstOrDefault(transition => transition.State is WindowState.Open or WindowState.Closing)?.Day ?? window.FirstOpening!.Day;
}
