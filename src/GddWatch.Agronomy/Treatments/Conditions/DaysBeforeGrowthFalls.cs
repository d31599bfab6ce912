using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Treatments.Conditions;

/// <summary>Met while it is at least a number of days until growth usually falls under a share of its usual yearly peak.</summary>
/// <param name="Turf">Whose growth.</param>
/// <param name="UnderShareOfPeak">The share of the usual yearly peak, 0 to 1.</param>
/// <param name="AtLeast">How many days must be left [days].</param>
/// <param name="Fallback">The usual date, written for the north, where fewer than ten earlier years are known; null leaves it unknown.</param>
public sealed record DaysBeforeGrowthFalls(TurfType Turf, double UnderShareOfPeak, int AtLeast, AnnualDay? Fallback) : Condition
{
    /// <inheritdoc/>
    public override bool IsLevel => true;

    /// <inheritdoc/>
    public override Verdict On(SeasonView view, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(view);
        UsualDate falls = view.UsualFallOfGrowth(this, day);
        if (falls.Never) return Verdict.Yes;
        if (falls.Day is not { } date) return Verdict.Unknown;
        return date.DayNumber - day.DayNumber >= AtLeast ? Verdict.Yes : Verdict.No;
    }

    /// <inheritdoc/>
    public override Because Why(SeasonView view, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(view);
        UsualDate falls = view.UsualFallOfGrowth(this, day);
        string what = $"growth usually falls under {GrowthPotentialCondition.Percent(UnderShareOfPeak)} of its yearly peak";
        if (falls.Never) return new PlainBecause($"It is not usual here that growth falls under {GrowthPotentialCondition.Percent(UnderShareOfPeak)} of its yearly peak ({falls.Source}).");
        if (falls.Day is not { } date) return new PlainBecause($"When {what} is not known ({falls.Source}).");
        int left = date.DayNumber - day.DayNumber;
        if (left == 0) return new UsualDateBecause($"On {Wording.Day(day)} growth is usually under {GrowthPotentialCondition.Percent(UnderShareOfPeak)} of its yearly peak ({falls.Source}); at least {Wording.Days(AtLeast)} before it falls under that are needed.", falls);
        return new UsualDateBecause(
            $"On {Wording.Day(day)}, {Wording.Days(left)} {(left == 1 ? "was" : "were")} left until {what} on {Wording.Day(date)} ({falls.Source}); at least {Wording.Days(AtLeast)} are needed.", falls);
    }

    /// <inheritdoc/>
    public override string Explain(ReadersUnits units) =>
        $"at least {Wording.Days(AtLeast)} are left until growth usually falls under {GrowthPotentialCondition.Percent(UnderShareOfPeak)} of its yearly peak";
}
