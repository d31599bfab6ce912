using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Treatments.Conditions;

/// <summary>Met from a number of days before the site's usual first freeze on.</summary>
/// <param name="AtMost">How many days before it [days].</param>
/// <param name="Chance">The chance that it has frozen by the usual date, 0 to 1: 0.5 is the median.</param>
/// <param name="Freeze">The minimum temperature that counts as a freeze, at or below.</param>
/// <param name="Fallback">The usual date, written for the north, where the site has fewer than ten earlier seasons; null leaves it unknown.</param>
public sealed record DaysBeforeFirstFreeze(int AtMost, double Chance, Temperature Freeze, AnnualDay? Fallback) : Condition
{
    /// <inheritdoc/>
    internal override void Judge(SeasonView view, DateOnly first, Span<Verdict> verdicts)
    {
        UsualDate usual = view.UsualFirstFreeze(this);
        if (usual.Never) verdicts.Fill(Verdict.No);
        else if (usual.Day is not { } freeze) verdicts.Fill(Verdict.Unknown);
        else FillFrom(freeze.AddDays(-AtMost), first, verdicts);
    }

    /// <inheritdoc/>
    public override UsualDate? KnownDay(SeasonView view)
    {
        UsualDate freeze = view.UsualFirstFreeze(this);
        return freeze.Day is { } day ? freeze with { Day = day.AddDays(-AtMost), Source = $"{Wording.Days(AtMost)} before {Wording.DayInYear(day)}, the usual first freeze ({freeze.Source})" } : null;
    }

    /// <inheritdoc/>
    public override Because Why(SeasonView view, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(view);
        return new FirstFreezeBecause(this, day, view.UsualFirstFreeze(this));
    }

    /// <inheritdoc/>
    public override string Explain(ReadersUnits units) =>
        $"{Wording.Days(AtMost)} or fewer are left before the usual first freeze ({Wording.Temperature(Freeze, units)} or below, {Math.Round(Chance * 100)} % chance by then)";
}

/// <summary>How near the usual first freeze is on a day.</summary>
/// <param name="Condition">What it was held against.</param>
/// <param name="Day">The day.</param>
/// <param name="Usual">The usual date and where it comes from.</param>
public sealed record FirstFreezeBecause(DaysBeforeFirstFreeze Condition, DateOnly Day, UsualDate Usual) : Because
{
    /// <inheritdoc/>
    public override bool RestsOnFallback => Usual.IsFallback;

    /// <inheritdoc/>
    public override string Sentence(ReadersUnits units)
    {
        if (Usual.Never) return $"A first freeze is not usual here ({Usual.Source}).";
        if (Usual.Day is not { } freeze) return $"The usual first freeze is not known ({Usual.Source}).";
        int left = freeze.DayNumber - Day.DayNumber;
        string when = left >= 0
            ? $"On {Wording.Day(Day)}, {Wording.Days(left)} {(left == 1 ? "was" : "were")} left until"
            : $"{Wording.Day(Day)} was {Wording.Days(-left)} past";
        return $"{when} the usual first freeze on {Wording.Day(freeze)} ({Usual.Source}); the limit is {Wording.Days(Condition.AtMost)} before it.";
    }

    /// <inheritdoc/>
    public override IReadOnlyList<Figure> Figures(ReadersUnits units) => Usual.Day is { } freeze
        ? [new Figure("Usual first freeze", $"{Wording.Day(freeze)} ({Usual.Source})", $"{Wording.Days(Condition.AtMost)} before it")]
        : [];
}
