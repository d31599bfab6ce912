using GddWatch.Agronomy.Backtesting.Rivals;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;

namespace GddWatch.Commands.Backtesting;

/// <summary>The words for the ways to find the day.</summary>
internal static class RivalWords
{
    /// <summary>The word that programs read.</summary>
    public static string Plain(Rival rival) => rival switch
    {
        Rival.Window => "window",
        Rival.Calendar => "calendar",
        Rival.BestFixedDate => "best fixed date",
        Rival.RunningMean => "running mean of air",
        _ => throw new ArgumentOutOfRangeException(nameof(rival), rival, "There is no word for it."),
    };

    /// <summary>The words that people read.</summary>
    public static string ForPeople(Rival rival) => rival switch
    {
        Rival.Window => "The judged window",
        Rival.Calendar => "The date on the calendar",
        Rival.BestFixedDate => "The best fixed date",
        Rival.RunningMean => "The running mean of the air",
        _ => throw new ArgumentOutOfRangeException(nameof(rival), rival, "There is no word for it."),
    };

    /// <summary>The way with its own rule, such as the date or the threshold.</summary>
    public static string WithRule(TreatmentComparison comparison, Rival rival, ReadersUnits units) => rival switch
    {
        Rival.Calendar when comparison.Treatment.CompareWith.Calendar is { } day =>
            $"The date on the calendar: {Wording.AnnualDay(day)}{(comparison.Treatment.CompareWith.CalendarNote is { Length: > 0 } note ? $" ({note})" : "")}",
        Rival.BestFixedDate => $"The best fixed date, by the {(comparison.HasObservations ? "dates seen in the other years" : "openings of the other years")}",
        Rival.RunningMean when comparison.RunningMean is { } rule => $"Rule of thumb: {rule.InWords(units)}",
        _ => ForPeople(rival),
    };
}
