using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Treatments.Conditions;

/// <summary>
/// Met while the last record of a treatment lies a number of days, or an amount of heat, back. Without a record it is not met: what is not recorded is not known to be done.
/// </summary>
/// <param name="Treatment">The treatment's id.</param>
/// <param name="Name">Its name.</param>
/// <param name="AtLeastDays">At least so many days [days]; null is no lower limit.</param>
/// <param name="AtMostDays">At most so many days [days]; null is no upper limit.</param>
/// <param name="Heat">At least so much heat; null where heat does not matter.</param>
/// <param name="WithinDays">A record older than this counts no more [days].</param>
public sealed record SinceTreatment(string Treatment, string Name, int? AtLeastDays, int? AtMostDays, HeatSince? Heat, int WithinDays) : Condition
{
    /// <summary>A new record begins the count afresh, so that it comes and goes.</summary>
    public override bool IsLevel => true;

    /// <inheritdoc/>
    public override IReadOnlyCollection<string> NeededRecords => [Treatment];

    /// <inheritdoc/>
    internal override void Judge(SeasonView view, DateOnly first, Span<Verdict> verdicts)
    {
        for (int i = 0; i < verdicts.Length; i++) verdicts[i] = OnDay(view, first.AddDays(i));
    }

    private Verdict OnDay(SeasonView view, DateOnly day)
    {
        if (view.LastDone(this, day) is not { } done) return Verdict.No;
        int days = day.DayNumber - done.On.DayNumber;
        if (days < AtLeastDays || days > AtMostDays) return Verdict.No;
        if (Heat is not { } heat) return Verdict.Yes;
        double sum = view.HeatAfter(heat, done.On, day);
        if (double.IsNaN(sum)) return Verdict.Unknown;
        return sum >= heat.Reaches.CelsiusDays ? Verdict.Yes : Verdict.No;
    }

    /// <inheritdoc/>
    public override Because Why(SeasonView view, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(view);
        if (view.LastDone(this, day) is not { } done) return new PlainBecause($"No {Name} is recorded here within the last {Wording.Days(WithinDays)}; whether it was done is unknown.");
        return new SinceTreatmentBecause(this, done, day, Heat is null ? double.NaN : view.HeatAfter(Heat, done.On, day));
    }

    /// <summary>The limits in days in words; empty where heat alone counts.</summary>
    internal string DayLimitWords => (AtLeastDays, AtMostDays) switch
    {
        ({ } least, { } most) => $"{least} to {Wording.Days(most)}",
        ({ } least, null) => $"at least {Wording.Days(least)}",
        (null, { } most) => $"at most {Wording.Days(most)}",
        _ => "",
    };

    /// <inheritdoc/>
    public override string Explain(ReadersUnits units)
    {
        var parts = new List<string>();
        if (AtLeastDays is { } least) parts.Add($"at least {Wording.Days(least)}");
        if (AtMostDays is { } most) parts.Add($"at most {Wording.Days(most)}");
        if (Heat is { } heat) parts.Add($"at least {Wording.Heat(heat.Reaches.CelsiusDays, units)} (base {Wording.Temperature(heat.Base, units)}, {DegreeDayWords.Of(heat.Method)})");
        return $"{Wording.List(parts)} have passed since a recorded {Name}";
    }
}

/// <summary>How long ago a treatment was recorded.</summary>
/// <param name="Condition">What it was held against.</param>
/// <param name="Done">The record.</param>
/// <param name="Day">The day.</param>
/// <param name="HeatCelsiusDays">The heat since then [°C-days]; NaN where it does not matter or is not known.</param>
public sealed record SinceTreatmentBecause(SinceTreatment Condition, TreatmentDone Done, DateOnly Day, double HeatCelsiusDays) : Because
{
    /// <inheritdoc/>
    public override string Sentence(ReadersUnits units)
    {
        string heat = double.IsNaN(HeatCelsiusDays) ? "" : $" and {Wording.Heat(HeatCelsiusDays, units)}";
        return $"{Condition.Name} is recorded for {Wording.Day(Done.On)}, {Wording.Days(Day.DayNumber - Done.On.DayNumber)}{heat} before {Wording.Day(Day)}; it is looked for when {Condition.Explain(units)}.";
    }

    /// <inheritdoc/>
    public override IReadOnlyList<Figure> Figures(ReadersUnits units)
    {
        var days = new Figure($"Since the recorded {Condition.Name}", Wording.Days(Day.DayNumber - Done.On.DayNumber), Condition.DayLimitWords);
        return double.IsNaN(HeatCelsiusDays) || Condition.Heat is not { } heat
            ? [days]
            : [days, new Figure($"Heat since the recorded {Condition.Name}", Wording.Heat(HeatCelsiusDays, units), $"at least {Wording.Heat(heat.Reaches.CelsiusDays, units)}")];
    }
}
