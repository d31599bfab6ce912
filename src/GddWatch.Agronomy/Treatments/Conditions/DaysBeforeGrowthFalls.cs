using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Treatments.Conditions;

/// <summary>
/// Met while it is at least, or at most, a number of days until growth usually falls under a share of its usual yearly peak. While growth is usually under it, no days are left.
/// </summary>
/// <param name="Turf">Whose growth.</param>
/// <param name="UnderShareOfPeak">The share of the usual yearly peak, 0 to 1.</param>
/// <param name="AtLeast">How many days must be left [days]; null is no lower limit.</param>
/// <param name="Fallback">The usual date, written for the north, where fewer than ten earlier years are known; null leaves it unknown.</param>
/// <param name="AtMost">How many days may be left [days]; null is no upper limit.</param>
public sealed record DaysBeforeGrowthFalls(TurfType Turf, double UnderShareOfPeak, int? AtLeast, AnnualDay? Fallback, int? AtMost = null) : Condition
{
    /// <inheritdoc/>
    public override bool IsLevel => true;

    /// <inheritdoc/>
    internal override void Judge(SeasonView view, DateOnly first, Span<Verdict> verdicts)
    {
        GrowthFalls falls = view.UsualFallOfGrowth(this);
        for (int i = 0; i < verdicts.Length; i++) verdicts[i] = On(falls.After(first.AddDays(i)), first.AddDays(i));
    }

    /// <inheritdoc/>
    public override Because Why(SeasonView view, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(view);
        UsualDate falls = view.UsualFallOfGrowth(this).After(day);
        if (falls.Never) return new PlainBecause($"It is not usual here that {What} ({falls.Source}).");
        if (falls.Day is not { } date) return new PlainBecause($"When {What} is not known ({falls.Source}).");
        int left = date.DayNumber - day.DayNumber;
        string wanted = AtMost is null ? "needed" : "looked for";
        if (left == 0)
        {
            string under = GrowthPotentialCondition.Percent(UnderShareOfPeak);
            return new UsualDateBecause($"On {Wording.Day(day)} growth is usually under {under} of its yearly peak ({falls.Source}); {LimitWords} before it falls under that are {wanted}.", falls);
        }

        return new UsualDateBecause(
            $"On {Wording.Day(day)}, {Wording.Days(left)} {(left == 1 ? "was" : "were")} left until {What} on {Wording.Day(date)} ({falls.Source}); {LimitWords} are {wanted}.", falls);
    }

    /// <inheritdoc/>
    public override string Explain(ReadersUnits units) => $"{LimitWords} are left until {What}";

    private Verdict On(UsualDate falls, DateOnly day)
    {
        if (falls.Never) return AtMost is null ? Verdict.Yes : Verdict.No;
        if (falls.Day is not { } date) return Verdict.Unknown;
        int left = date.DayNumber - day.DayNumber;
        return left < AtLeast || left > AtMost ? Verdict.No : Verdict.Yes;
    }

    private string What => $"growth usually falls under {GrowthPotentialCondition.Percent(UnderShareOfPeak)} of its yearly peak";

    private string LimitWords => (AtLeast, AtMost) switch
    {
        ({ } least, { } most) => $"{least} to {Wording.Days(most)}",
        (null, { } most) => $"at most {Wording.Days(most)}",
        ({ } least, null) => $"at least {Wording.Days(least)}",
        _ => "any number of days",
    };
}
