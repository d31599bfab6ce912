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
    public override Verdict On(SeasonView view, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(view);
        if (LastDone(view, day) is not { } done) return Verdict.No;
        int days = day.DayNumber - done.On.DayNumber;
        if (days < AtLeastDays || days > AtMostDays) return Verdict.No;
        if (Heat is not { } heat) return Verdict.Yes;
        double sum = HeatSinceDone(view, done, day);
        if (double.IsNaN(sum)) return Verdict.Unknown;
        return sum >= heat.Reaches.CelsiusDays ? Verdict.Yes : Verdict.No;
    }

    /// <inheritdoc/>
    public override Because Why(SeasonView view, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(view);
        if (LastDone(view, day) is not { } done) return new PlainBecause($"No {Name} is recorded here within the last {Wording.Days(WithinDays)}; whether it was done is unknown.");
        return new SinceTreatmentBecause(this, done, day, Heat is null ? double.NaN : HeatSinceDone(view, done, day));
    }

    /// <inheritdoc/>
    public override string Explain(ReadersUnits units)
    {
        var parts = new List<string>();
        if (AtLeastDays is { } least) parts.Add($"at least {Wording.Days(least)}");
        if (AtMostDays is { } most) parts.Add($"at most {Wording.Days(most)}");
        if (Heat is { } heat) parts.Add($"at least {Wording.Heat(heat.Reaches.CelsiusDays, units)} (base {Wording.Temperature(heat.Base, units)}, {DegreeDayWords.Of(heat.Method)})");
        return $"{Wording.List(parts)} have passed since a recorded {Name}";
    }

    private TreatmentDone? LastDone(SeasonView view, DateOnly day)
    {
        TreatmentDone? done = view.Metrics.Journal.LastDone(Treatment, day);
        return done is not null && day.DayNumber - done.On.DayNumber <= WithinDays ? done : null;
    }

    private double HeatSinceDone(SeasonView view, TreatmentDone done, DateOnly day)
    {
        HeatSince heat = Heat!;
        double sum = 0;
        for (DateOnly each = done.On.AddDays(1); each <= day; each = each.AddDays(1))
        {
            if (!view.Metrics.Series.Holds(each)) return double.NaN;
            int index = view.Metrics.Series.IndexOf(each);
            double minimum = view.Metrics.Series.MinimumAirC[index];
            double maximum = view.Metrics.Series.MaximumAirC[index];
            if (double.IsNaN(minimum) || double.IsNaN(maximum)) return double.NaN;
            double next = index + 1 < view.Metrics.Series.Count && each < day ? view.Metrics.Series.MinimumAirC[index + 1] : minimum;
            sum += DailyHeat.DegreeDays(heat.Method, DegreeDayCutoff.None, minimum, maximum, double.IsNaN(next) ? minimum : next, heat.Base.Celsius, null);
        }

        return sum;
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
}
