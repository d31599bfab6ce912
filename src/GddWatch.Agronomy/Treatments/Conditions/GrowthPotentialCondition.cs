using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Treatments.Conditions;

/// <summary>
/// Met while the growth potential, averaged over the last days, is past a value, or past a share of the site's usual yearly peak, has been on enough of the last days,
/// and goes the way that is asked for.
/// </summary>
/// <param name="Turf">Whose growth.</param>
/// <param name="MeanOverDays">Over how many days is averaged, today included [days].</param>
/// <param name="Passing">From which side.</param>
/// <param name="Share">The value, 0 to 1; of the usual yearly peak where <paramref name="OfPeak"/> says so.</param>
/// <param name="Holding">How long it must be so.</param>
/// <param name="OfPeak">Where it is a share of the usual yearly peak, what stands in for the peak where fewer than ten earlier years are known: a growth potential, or NaN for none; null where
/// the value is the growth potential itself.</param>
/// <param name="Direction">Which way it must go; null where either will do. Clearly rising or falling is a change of more than 0.02 in seven days.</param>
/// <param name="LetsGoAt">Once met it stays met until the value has gone back past this, in the same measure; null where it must go on being past it.</param>
public sealed record GrowthPotentialCondition(
    TurfType Turf, int MeanOverDays, Passing Passing, double Share, Holding Holding, double? OfPeak = null, GrowthDirection? Direction = null, double? LetsGoAt = null) : Condition
{
    private const int DirectionDays = 7;
    private const double Flat = 0.02;

    /// <inheritdoc/>
    public override bool IsLevel => true;

    /// <inheritdoc/>
    internal override void Judge(SeasonView view, DateOnly first, Span<Verdict> verdicts)
    {
        double unit = UnitOf(view);
        if (double.IsNaN(unit))
        {
            verdicts.Fill(Verdict.Unknown);
            return;
        }

        double[] means = view.Metrics.GrowthMeans(Turf, MeanOverDays);
        int index = view.Metrics.Series.IndexOf(first);
        HeldBand.Judge(means, index, view.FirstIndex, PastOf(Share * unit), Holding, LetsGoAt is { } back ? PastOf(back * unit) : null, verdicts);
        if (Direction is not { } way) return;
        for (int i = 0; i < verdicts.Length; i++)
        {
            if (verdicts[i] == Verdict.Yes) verdicts[i] = Goes(way, At(means, index + i) - At(means, index + i - DirectionDays));
        }
    }

    /// <inheritdoc/>
    public override Because Why(SeasonView view, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(view);
        double[] means = view.Metrics.GrowthMeans(Turf, MeanOverDays);
        int today = view.Metrics.Series.IndexOf(day);
        double unit = UnitOf(view);
        int past = double.IsNaN(unit) ? 0 : HeldBand.Count(means, today, PastOf(Share * unit), Holding.OfDays).In;
        return new GrowthPotentialBecause(this, day, At(means, today), At(means, today - DirectionDays), OfPeak is null ? null : view.UsualGrowthPeak(this), past);
    }

    /// <inheritdoc/>
    public override string Explain(ReadersUnits units)
    {
        string stays = LetsGoAt is { } back ? $" (and so until it is back at {Percent(back)})" : "";
        return $"the {Name} is {LimitWords} {Holding.InWords()}{stays}{(Direction is null ? "" : $", and {DirectionWords}")}";
    }

    /// <inheritdoc/>
    internal override DrawnMeasure? Measure(SeasonView view, ReadersUnits units)
    {
        double limit = Share * UnitOf(view);
        if (double.IsNaN(limit)) return null;
        string side = Passing == Passing.RisesAbove ? "at least" : "at most";
        return DrawnMeasure.OfShare(Name, $"Growth potential, {MeanOverDays}-day mean", view.Metrics.GrowthMeans(Turf, MeanOverDays), [limit], $"{side} {Percent(limit)}");
    }

    /// <summary>What is looked at, in words.</summary>
    internal string Name => $"{MeanOverDays}-day mean growth potential of {(Turf == TurfType.CoolSeason ? "cool-season" : "warm-season")} turf";

    /// <summary>The limit in words.</summary>
    internal string LimitWords => $"{(Passing == Passing.RisesAbove ? "at least" : "at most")} {Percent(Share)}{(OfPeak is null ? "" : " of the site's usual yearly peak")}";

    /// <summary>The direction in words.</summary>
    internal string DirectionWords => Direction switch
    {
        GrowthDirection.Rising => "rising",
        GrowthDirection.RisingOrFlat => "rising or flat",
        GrowthDirection.Falling => "falling",
        _ => "",
    };

    /// <summary>A share as percent.</summary>
    internal static string Percent(double share) => $"{Math.Round(share * 100)} %";

    private static Verdict Goes(GrowthDirection way, double change)
    {
        if (double.IsNaN(change)) return Verdict.Unknown;
        bool goes = way switch
        {
            GrowthDirection.Rising => change > Flat,
            GrowthDirection.RisingOrFlat => change >= -Flat,
            _ => change < -Flat,
        };
        return goes ? Verdict.Yes : Verdict.No;
    }

    private Band PastOf(double value) => Passing == Passing.RisesAbove ? Band.From(value) : Band.UpTo(value);

    /// <summary>What a share of 1 stands for: the usual yearly peak, or 1 itself; NaN where the peak is not known.</summary>
    private double UnitOf(SeasonView view) => OfPeak is null ? 1 : view.UsualGrowthPeak(this).Value ?? double.NaN;

    private static double At(double[] values, int index) => (uint)index < (uint)values.Length ? values[index] : double.NaN;
}

/// <summary>The state of growth on a day.</summary>
/// <param name="Condition">What it was held against.</param>
/// <param name="Day">The day.</param>
/// <param name="Mean">The mean growth potential, NaN where it is not known.</param>
/// <param name="MeanBefore">The mean a week before.</param>
/// <param name="Peak">The usual yearly peak; null where it does not matter.</param>
/// <param name="DaysPast">On how many of the last days it was past the limit [days].</param>
public sealed record GrowthPotentialBecause(GrowthPotentialCondition Condition, DateOnly Day, double Mean, double MeanBefore, UsualValue? Peak, int DaysPast) : Because
{
    /// <inheritdoc/>
    public override bool RestsOnFallback => Peak is { IsFallback: true };

    /// <inheritdoc/>
    public override string Sentence(ReadersUnits units)
    {
        if (double.IsNaN(Mean)) return $"The {Condition.Name} is not known on {Wording.Day(Day)}: too many days of weather are missing.";
        if (Peak is { Value: null } unknown) return $"The usual yearly peak of growth is not known here ({unknown.Source}).";
        string peak = Peak is { Value: { } known } ? $", {GrowthPotentialCondition.Percent(Mean / known)} of the usual yearly peak of {GrowthPotentialCondition.Percent(known)} ({Peak.Value.Source})" : "";
        string way = Condition.Direction is null || double.IsNaN(MeanBefore) ? "" : $" and {GrowthPotentialCondition.Percent(MeanBefore)} a week before";
        string held = Condition.Holding.FoundInWords(DaysPast);
        string wanted = Condition.Direction is null ? Condition.LimitWords : $"{Condition.LimitWords} and {Condition.DirectionWords}";
        return $"The {Condition.Name} was {GrowthPotentialCondition.Percent(Mean)}{peak} on {Wording.Day(Day)}{way}; {wanted} is looked for{(held.Length > 0 ? $", and the limit was passed {held}" : "")}.";
    }

    /// <inheritdoc/>
    public override IReadOnlyList<Figure> Figures(ReadersUnits units) => double.IsNaN(Mean) || Peak is { Value: null }
        ? []
        : [new Figure(Wording.Capital(Condition.Name), GrowthPotentialCondition.Percent(Peak is { Value: { } peak } ? Mean / peak : Mean), Condition.LimitWords)];
}
