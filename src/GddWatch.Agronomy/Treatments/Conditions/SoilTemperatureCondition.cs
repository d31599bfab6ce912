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
/// <param name="LetsGoAt">Once met it stays met until the mean has gone back past this; null where it must go on being past the threshold.</param>
public sealed record SoilTemperatureCondition(
    Depth Depth, int MeanOverDays, Passing Passing, Temperature Threshold, Holding Holding, WhereAlreadySo? WhereAlreadySo = null, Temperature? LetsGoAt = null) : Condition
{
    /// <inheritdoc/>
    public override bool IsLevel => true;

    /// <inheritdoc/>
    internal override void Judge(SeasonView view, DateOnly first, Span<Verdict> verdicts)
    {
        HeldBand.Judge(
            view.Metrics.SoilMeans(Depth, MeanOverDays), view.Metrics.Series.IndexOf(first), view.FirstIndex, PastOf(Threshold), Holding, LetsGoAt is { } back ? PastOf(back) : null, verdicts);
        if (WhereAlreadySo is null || !verdicts.Contains(Verdict.Yes) || !view.PassesAtStart(this)) return;
        int tooEarly = view.EarliestWhereAlreadySo(this).Day!.Value.DayNumber - first.DayNumber;
        verdicts[..Math.Clamp(tooEarly, 0, verdicts.Length)].Replace(Verdict.Yes, Verdict.No);
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
            wait,
            past < Holding.Days && On(view, day) == Verdict.Yes);
    }

    /// <inheritdoc/>
    public override string Explain(ReadersUnits units)
    {
        string passes = Passing == Passing.RisesAbove ? "is at or above" : "is at or below";
        string already = WhereAlreadySo is { } rule
            ? $" (where the soil is already past it at the season's start, not earlier than {Wording.Days(rule.DaysBeforeUsual)} before it usually reaches {Wording.Temperature(rule.UsualThreshold, units)})"
            : "";
        string stays = LetsGoAt is { } back ? $" (and so until it is back at {Wording.Temperature(back, units)})" : "";
        return $"the {MeanOverDays}-day mean soil temperature at {Wording.Depth(Depth, units)} {passes} {Wording.Temperature(Threshold, units)} {HoldingWords}{stays}{already}";
    }

    /// <inheritdoc/>
    internal override DrawnMeasure Measure(SeasonView view, ReadersUnits units) => DrawnMeasure.OfTemperature(
        $"{MeanOverDays}-day mean soil temperature at {Wording.Depth(Depth, units)} ({(view.Metrics.SoilIsMeasured ? "measured" : "estimated")})",
        $"Soil at {Wording.Depth(Depth, units)}, {MeanOverDays}-day mean",
        view.Metrics.SoilMeans(Depth, MeanOverDays),
        [Threshold.Celsius],
        $"{(Passing == Passing.RisesAbove ? "at or above" : "at or below")} {Wording.Temperature(Threshold, units)}",
        units);

    /// <summary>The holding in words.</summary>
    internal string HoldingWords => Holding.InWords();

    /// <summary>On how many of the last days the mean was past a threshold, and on how many it is known.</summary>
    internal (int Past, int Known) CountPast(SeasonView view, DateOnly day, Temperature threshold) =>
        HeldBand.Count(view.Metrics.SoilMeans(Depth, MeanOverDays), view.Metrics.Series.IndexOf(day), PastOf(threshold), Holding.OfDays);

    private Band PastOf(Temperature threshold) => Passing == Passing.RisesAbove ? Band.From(threshold.Celsius) : Band.UpTo(threshold.Celsius);
}

/// <summary>The state of the soil temperature on a day.</summary>
/// <param name="Condition">What it was held against.</param>
/// <param name="Day">The day.</param>
/// <param name="MeanC">The mean [°C], NaN where it is not known.</param>
/// <param name="DeviationC">The standard deviation of the day's estimate [°C].</param>
/// <param name="DaysPast">On how many of the last days it was past the threshold [days].</param>
/// <param name="Measured">Whether it was measured rather than estimated.</param>
/// <param name="StaysMet">Whether it is met only because it has not let go yet.</param>
/// <param name="WaitUntil">The earliest day for soil already past it at the season's start, and where it comes from, where that rule applies.</param>
public sealed record SoilTemperatureBecause(
    SoilTemperatureCondition Condition, DateOnly Day, double MeanC, double DeviationC, int DaysPast, bool Measured, UsualDate? WaitUntil, bool StaysMet = false) : Because
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
        if (StaysMet) return $"{found}; it has been {limit} and has not gone back to {Wording.Temperature(Condition.LetsGoAt!.Value, units)}.";
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
