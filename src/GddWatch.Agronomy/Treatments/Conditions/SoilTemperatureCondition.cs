using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Treatments.Conditions;

/// <summary>Met while the mean soil temperature of the last days is past a threshold and has been on enough of the last days.</summary>
/// <param name="Depth">The depth.</param>
/// <param name="MeanOverDays">Over how many days is averaged, today included [days].</param>
/// <param name="Passing">From which side.</param>
/// <param name="Threshold">The threshold; at it counts as past it.</param>
/// <param name="Holding">How long it must be so.</param>
/// <param name="WhereAlreadySo">The rule for soil that is past it when the season starts; null lets that day count.</param>
public sealed record SoilTemperatureCondition(
    Depth Depth, int MeanOverDays, Passing Passing, Temperature Threshold, Holding Holding, WhereAlreadySo? WhereAlreadySo = null) : Condition
{
    /// <inheritdoc/>
    public override Verdict On(SeasonView view, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(view);
        (int past, int known) = CountPast(view, day, Threshold);
        if (past < Holding.Days) return past + (Holding.OfDays - known) >= Holding.Days ? Verdict.Unknown : Verdict.No;
        if (WhereAlreadySo is null || !view.PassesAtStart(this)) return Verdict.Yes;
        return day < view.EarliestWhereAlreadySo(this).Day ? Verdict.No : Verdict.Yes;
    }

    /// <inheritdoc/>
    public override Because Why(SeasonView view, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(view);
        (int past, _) = CountPast(view, day, Threshold);
        UsualDate? wait = null;
        if (past >= Holding.Days && WhereAlreadySo is not null && view.PassesAtStart(this)) wait = view.EarliestWhereAlreadySo(this);
        return new SoilTemperatureBecause(
            this,
            day,
            view.Metrics.SoilMeanAt(Depth, MeanOverDays, day),
            view.Metrics.SoilDeviationAt(Depth, day),
            past,
            view.Metrics.SoilIsMeasured,
            wait);
    }

    /// <inheritdoc/>
    public override string Explain(ReadersUnits units)
    {
        string passes = Passing == Passing.RisesAbove ? "is at or above" : "is at or below";
        string already = WhereAlreadySo is { } rule
            ? $" (where the soil is already past it at the season's start, not earlier than {Wording.Days(rule.DaysBeforeUsual)} before it usually reaches {Wording.Temperature(rule.UsualThreshold, units)})"
            : "";
        return $"the {MeanOverDays}-day mean soil temperature at {Wording.Depth(Depth, units)} {passes} {Wording.Temperature(Threshold, units)} {HoldingWords}{already}";
    }

    /// <summary>The holding in words.</summary>
    internal string HoldingWords => Holding.Days == Holding.OfDays
        ? Holding.Days == 1 ? "on the day itself" : $"on {Wording.Days(Holding.Days)} in a row"
        : $"on {Holding.Days} of the last {Wording.Days(Holding.OfDays)}";

    /// <summary>On how many of the last days the mean was past a threshold, and on how many it is known.</summary>
    internal (int Past, int Known) CountPast(SeasonView view, DateOnly day, Temperature threshold)
    {
        int past = 0;
        int known = 0;
        double[] means = view.Metrics.SoilMeans(Depth, MeanOverDays);
        int today = view.Metrics.Series.IndexOf(day);
        for (int back = 0; back < Holding.OfDays; back++)
        {
            int index = today - back;
            if ((uint)index >= (uint)means.Length || double.IsNaN(means[index])) continue;
            double mean = means[index];
            known++;
            if (Passing == Passing.RisesAbove ? mean >= threshold.Celsius : mean <= threshold.Celsius) past++;
        }

        return (past, known);
    }
}

/// <summary>The state of the soil temperature on a day.</summary>
/// <param name="Condition">What it was held against.</param>
/// <param name="Day">The day.</param>
/// <param name="MeanC">The mean [°C], NaN where it is not known.</param>
/// <param name="DeviationC">The standard deviation of the day's estimate [°C].</param>
/// <param name="DaysPast">On how many of the last days it was past the threshold [days].</param>
/// <param name="Measured">Whether it was measured rather than estimated.</param>
/// <param name="WaitUntil">The earliest day for soil already past it at the season's start, and where it comes from, where that rule applies.</param>
public sealed record SoilTemperatureBecause(
    SoilTemperatureCondition Condition, DateOnly Day, double MeanC, double DeviationC, int DaysPast, bool Measured, UsualDate? WaitUntil) : Because
{
    private string Name(ReadersUnits units) => $"{Condition.MeanOverDays}-day mean soil temperature at {Wording.Depth(Condition.Depth, units)}";

    private string Value(ReadersUnits units)
    {
        if (Measured || double.IsNaN(DeviationC)) return $"{Wording.Temperature(MeanC, units)} (measured)";
        return $"{Wording.Temperature(MeanC, units)} (estimated, give or take {Wording.TemperatureDifference(DeviationC, units)})";
    }

    /// <inheritdoc/>
    public override bool RestsOnSoil => true;

    /// <inheritdoc/>
    public override bool RestsOnFallback => WaitUntil is { IsFallback: true } wait && Day <= wait.Day;

    /// <inheritdoc/>
    public override string Sentence(ReadersUnits units)
    {
        if (double.IsNaN(MeanC)) return $"The {Name(units)} is not known on {Wording.Day(Day)}: too many days of weather are missing.";
        string side = Condition.Passing == Passing.RisesAbove ? "at or above" : "at or below";
        string limit = $"{side} {Wording.Temperature(Condition.Threshold, units)}";
        string found = $"The {Name(units)} was {Value(units)} on {Wording.Day(Day)}";
        if (Condition.Holding.OfDays == 1) return DaysPast > 0 ? $"{found}, and so {limit}." : $"{found}; {limit} is needed.";
        string held = DaysPast == Condition.Holding.OfDays ? $"on all of the last {Wording.Days(DaysPast)}" : $"on {DaysPast} of the last {Wording.Days(Condition.Holding.OfDays)}";
        if (DaysPast < Condition.Holding.Days) return $"{found}, and was {limit} {held}; {Condition.Holding.Days} are needed.";
        string counts = WaitUntil is { Day: { } wait, Source: var source }
            ? $" The soil was past it when the season started, so it counts from {Wording.Day(wait)} on ({source})."
            : "";
        return $"{found}, and was {limit} {held}.{counts}";
    }

    /// <inheritdoc/>
    public override IReadOnlyList<Figure> Figures(ReadersUnits units)
    {
        if (double.IsNaN(MeanC)) return [];
        string side = Condition.Passing == Passing.RisesAbove ? "at or above" : "at or below";
        return [new Figure(Name(units)[..1].ToUpperInvariant() + Name(units)[1..], Value(units), $"{side} {Wording.Temperature(Condition.Threshold, units)} {Condition.HoldingWords}")];
    }
}
