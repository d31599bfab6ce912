using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Treatments.Conditions;

/// <summary>Not before, or not after, a day of the year. A guard beside other conditions, never what opens a window by itself.</summary>
/// <param name="NotBefore">The first day on which it is met, written for the north; null is no lower bound.</param>
/// <param name="NotAfter">The last day on which it is met, written for the north; null is no upper bound.</param>
public sealed record CalendarGuard(AnnualDay? NotBefore, AnnualDay? NotAfter) : Condition
{
    /// <inheritdoc/>
    internal override void Judge(SeasonView view, DateOnly first, Span<Verdict> verdicts)
    {
        DateOnly from = NotBefore is { } notBefore ? view.DateInSeason(notBefore) : DateOnly.MinValue;
        DateOnly until = NotAfter is { } notAfter ? view.DateInSeason(notAfter) : DateOnly.MaxValue;
        FillFrom(from, first, verdicts);
        verdicts[Math.Clamp(until.DayNumber - first.DayNumber + 1, 0, verdicts.Length)..].Fill(Verdict.No);
    }

    /// <inheritdoc/>
    public override Because Why(SeasonView view, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(view);
        if (NotBefore is { } notBefore && day < view.DateInSeason(notBefore))
        {
            return new PlainBecause($"It is looked for from {Wording.Day(view.DateInSeason(notBefore))} on.");
        }

        return NotAfter is { } notAfter && day > view.DateInSeason(notAfter)
            ? new PlainBecause($"It is not looked for after {Wording.Day(view.DateInSeason(notAfter))}.")
            : new PlainBecause(NotBefore is { } from ? $"The date allows it, from {Wording.Day(view.DateInSeason(from))} on." : "The date allows it.");
    }

    /// <inheritdoc/>
    public override string Explain(ReadersUnits units) => (NotBefore, NotAfter) switch
    {
        ({ } before, null) => $"it is {Wording.AnnualDay(before)} or later",
        (null, { } after) => $"it is not past {Wording.AnnualDay(after)}",
        ({ } before, { } after) => $"it is between {Wording.AnnualDay(before)} and {Wording.AnnualDay(after)}",
        _ => "the date does not matter",
    };
}
