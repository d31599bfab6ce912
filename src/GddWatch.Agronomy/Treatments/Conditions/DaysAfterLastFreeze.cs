using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Treatments.Conditions;

/// <summary>Met from a number of days after the site's usual last freeze on; always where a freeze is not usual.</summary>
/// <param name="AtLeast">How many days after it [days].</param>
/// <param name="Chance">The chance that the last freeze is past by the usual date, 0 to 1: 0.5 is the median, 0.9 a safer date later on.</param>
/// <param name="Freeze">The minimum temperature that counts as a freeze, at or below.</param>
/// <param name="Fallback">The usual date, written for the north, where fewer than ten earlier winters are known; null leaves it unknown.</param>
public sealed record DaysAfterLastFreeze(int AtLeast, double Chance, Temperature Freeze, AnnualDay? Fallback) : Condition
{
    /// <inheritdoc/>
    internal override void Judge(SeasonView view, DateOnly first, Span<Verdict> verdicts)
    {
        UsualDate usual = view.UsualLastFreeze(this);
        if (usual.Never) verdicts.Fill(Verdict.Yes);
        else if (usual.Day is not { } freeze) verdicts.Fill(Verdict.Unknown);
        else FillFrom(freeze.AddDays(AtLeast), first, verdicts);
    }

    /// <inheritdoc/>
    public override UsualDate? KnownDay(SeasonView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        UsualDate freeze = view.UsualLastFreeze(this);
        return freeze.Day is { } day ? freeze with { Day = day.AddDays(AtLeast), Source = $"{Wording.Days(AtLeast)} after {Wording.DayInYear(day)}, the usual last freeze ({freeze.Source})" } : null;
    }

    /// <inheritdoc/>
    public override Because Why(SeasonView view, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(view);
        return new LastFreezeBecause(this, day, view.UsualLastFreeze(this));
    }

    /// <inheritdoc/>
    public override string Explain(ReadersUnits units) =>
        $"at least {Wording.Days(AtLeast)} have passed since the usual last freeze ({Wording.Temperature(Freeze, units)} or below, {Math.Round(Chance * 100)} % chance that it is past by then)";
}

/// <summary>How long ago the usual last freeze was on a day.</summary>
/// <param name="Condition">What it was held against.</param>
/// <param name="Day">The day.</param>
/// <param name="Usual">The usual date and where it comes from.</param>
public sealed record LastFreezeBecause(DaysAfterLastFreeze Condition, DateOnly Day, UsualDate Usual) : Because
{
    /// <inheritdoc/>
    public override bool RestsOnFallback => Usual.IsFallback;

    /// <inheritdoc/>
    public override string Sentence(ReadersUnits units)
    {
        if (Usual.Never) return $"A freeze so late is not usual here ({Usual.Source}).";
        if (Usual.Day is not { } freeze) return $"The usual last freeze is not known ({Usual.Source}).";
        int past = Day.DayNumber - freeze.DayNumber;
        string when = past >= 0
            ? $"{Wording.Day(Day)} was {Wording.Days(past)} past"
            : $"On {Wording.Day(Day)}, {Wording.Days(-past)} {(past == -1 ? "was" : "were")} left until";
        return $"{when} the usual last freeze on {Wording.Day(freeze)} ({Usual.Source}); the limit is {Wording.Days(Condition.AtLeast)} after it.";
    }

    /// <inheritdoc/>
    public override IReadOnlyList<Figure> Figures(ReadersUnits units) => Usual.Day is { } freeze
        ? [new Figure("Usual last freeze", $"{Wording.Day(freeze)} ({Usual.Source})", $"{Wording.Days(Condition.AtLeast)} after it")]
        : [];
}
