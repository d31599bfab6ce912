using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Treatments.Conditions;

/// <summary>
/// Something about a site that is so, or not so, on a day of a season. Asked about a day it uses nothing later than that day.
/// One case a file; the cases are all in this folder.
/// </summary>
public abstract record Condition
{
    /// <summary>Of so many days the verdicts of a part are kept on the stack: more than a year.</summary>
    private protected const int MostOnStack = 400;

    private protected Condition()
    {
    }

    /// <summary>The conditions that this one is made of; none for a simple one.</summary>
    public virtual IReadOnlyList<Condition> Parts => [];

    /// <summary>The condition itself and all that it is made of, however deep.</summary>
    public IEnumerable<Condition> AndItsParts() => Parts.SelectMany(part => part.AndItsParts()).Prepend(this);

    /// <summary>
    /// Whether it goes by a level that comes and goes, such as warmth or growth, rather than by a sum or a date that passes once. A level that is past its limit when a season
    /// starts says nothing about its end: low growth in March is the time before, not after. So a window is not closed by it until it has been otherwise once.
    /// </summary>
    public virtual bool IsLevel => Parts.Any(part => part.IsLevel);

    /// <summary>
    /// The ids of the treatments without whose record it is never met: of an "all" those of every part, of an "any" those that all parts share, of a "not" none.
    /// </summary>
    public virtual IReadOnlyCollection<string> NeededRecords => [];

    /// <summary>Whether it is met on a day.</summary>
    public Verdict On(SeasonView view, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(view);
        Span<Verdict> one = stackalloc Verdict[1];
        Judge(view, day, one);
        return one[0];
    }

    /// <summary>Whether it is met on each of some days in a row. A day's verdict uses nothing later than that day: asked of many days at once, it is what each alone would get.</summary>
    /// <param name="view">The season.</param>
    /// <param name="first">The first of the days.</param>
    /// <param name="verdicts">Room for a verdict a day.</param>
    internal abstract void Judge(SeasonView view, DateOnly first, Span<Verdict> verdicts);

    /// <summary>Not met before a day, and met from it on.</summary>
    private protected static void FillFrom(DateOnly met, DateOnly first, Span<Verdict> verdicts)
    {
        int before = Math.Clamp(met.DayNumber - first.DayNumber, 0, verdicts.Length);
        verdicts[..before].Fill(Verdict.No);
        verdicts[before..].Fill(Verdict.Yes);
    }

    /// <summary>The first day on which it is met, and where it comes from, where a date alone decides it and so it is known beforehand; else null.</summary>
    public virtual UsualDate? KnownDay(SeasonView view) => null;

    /// <summary>What decided it on that day, met or not.</summary>
    public abstract Because Why(SeasonView view, DateOnly day);

    /// <summary>What it goes by as a line that can be drawn; null where there is none.</summary>
    internal virtual DrawnMeasure? Measure(SeasonView view, ReadersUnits units) => null;

    /// <summary>The condition in plain words, fitting behind "when".</summary>
    public abstract string Explain(ReadersUnits units);
}
