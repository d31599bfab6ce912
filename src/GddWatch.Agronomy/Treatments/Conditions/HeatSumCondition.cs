using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Treatments.Conditions;

/// <summary>Met from the day on which a heat sum reaches a value.</summary>
/// <param name="Sum">What is summed and how; the threshold belongs to it.</param>
/// <param name="Reaches">The value.</param>
public sealed record HeatSumCondition(HeatSumDefinition Sum, DegreeDays Reaches) : Condition
{
    /// <inheritdoc/>
    internal override void Judge(SeasonView view, DateOnly first, Span<Verdict> verdicts)
    {
        double[] sums = view.Metrics.HeatSumColumn(Sum);
        int index = view.Metrics.Series.IndexOf(first);
        double reaches = Reaches.CelsiusDays;
        for (int i = 0; i < verdicts.Length; i++)
        {
            double sum = (uint)(index + i) < (uint)sums.Length ? sums[index + i] : double.NaN;
            verdicts[i] = double.IsNaN(sum) ? Verdict.Unknown : sum >= reaches ? Verdict.Yes : Verdict.No;
        }
    }

    /// <inheritdoc/>
    public override Because Why(SeasonView view, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(view);
        return new HeatSumBecause(this, day, view.HeatSumStart(Sum, day), view.Metrics.HeatSumAt(Sum, day));
    }

    /// <inheritdoc/>
    public override string Explain(ReadersUnits units) =>
        $"the heat sum {Describe(Sum, units)} from {Wording.AnnualDay(Sum.Start)}{BiofixWords(units)} reaches {Wording.Heat(Reaches.CelsiusDays, units)}";

    /// <inheritdoc/>
    internal override DrawnMeasure Measure(SeasonView view, ReadersUnits units) => DrawnMeasure.OfHeat(
        $"heat sum {Describe(Sum, units)}",
        $"Heat of the {(Sum.SoilDepth is { } depth ? $"soil at {Wording.Depth(depth, units)}" : "air")}, base {Wording.Temperature(Sum.Base, units)}",
        view.Metrics.HeatSumColumn(Sum),
        [Reaches.CelsiusDays],
        $"{Wording.Heat(Reaches.CelsiusDays, units)} or more",
        units);

    /// <summary>What the weather must do before heat counts, in words; empty where nothing.</summary>
    private string BiofixWords(ReadersUnits units) => Sum.Biofix is { } biofix
        ? $", counted once the {biofix.MeanDays}-day mean of the air is at or above {Wording.Temperature(biofix.Passes, units)},"
        : "";

    /// <summary>Base, upper threshold and method of a sum in words.</summary>
    internal static string Describe(HeatSumDefinition sum, ReadersUnits units)
    {
        string where = sum.SoilDepth is { } depth ? $"of the soil at {Wording.Depth(depth, units)}" : "of the air";
        string upper = sum.Upper is { } limit ? $", upper {Wording.Temperature(limit, units)}" : "";
        return $"{where} (base {Wording.Temperature(sum.Base, units)}{upper}, {DegreeDayWords.Of(sum.Method)})";
    }
}

/// <summary>The state of a heat sum on a day.</summary>
/// <param name="Condition">What it was held against.</param>
/// <param name="Day">The day.</param>
/// <param name="Start">The day from which was summed.</param>
/// <param name="SumCelsiusDays">The sum [°C-days], NaN where it is not known.</param>
public sealed record HeatSumBecause(HeatSumCondition Condition, DateOnly Day, DateOnly Start, double SumCelsiusDays) : Because
{
    /// <inheritdoc/>
    public override bool RestsOnSoil => Condition.Sum.SoilDepth is not null;

    /// <inheritdoc/>
    public override string Sentence(ReadersUnits units)
    {
        string name = HeatSumCondition.Describe(Condition.Sum, units);
        string limit = Wording.Heat(Condition.Reaches.CelsiusDays, units);
        if (double.IsNaN(SumCelsiusDays))
        {
            return $"The heat sum {name} since {Wording.Day(Start)} is not known: too many days of weather are missing.";
        }

        string sum = Wording.Heat(SumCelsiusDays, units);
        return SumCelsiusDays >= Condition.Reaches.CelsiusDays
            ? $"The heat sum {name} has reached {limit}: {sum} from {Wording.DayInYear(Start)} to {Wording.Day(Day)}."
            : $"The heat sum {name} is {sum} of {limit}, from {Wording.DayInYear(Start)} to {Wording.Day(Day)}.";
    }

    /// <inheritdoc/>
    public override IReadOnlyList<Figure> Figures(ReadersUnits units) => double.IsNaN(SumCelsiusDays)
        ? []
        : [new Figure($"Heat sum {HeatSumCondition.Describe(Condition.Sum, units)}", Wording.Heat(SumCelsiusDays, units), $"reaches {Wording.Heat(Condition.Reaches.CelsiusDays, units)}")];
}
