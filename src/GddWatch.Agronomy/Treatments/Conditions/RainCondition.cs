using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Treatments.Conditions;

/// <summary>Met while the rain of the last days, or the rain forecast for the next, is at least or at most an amount. A day whose rain is missing leaves it unknown: a missing day is not a dry one.</summary>
/// <param name="Days">Over how many days: the last ones, today included, or the next ones, from tomorrow [days].</param>
/// <param name="IsAhead">Whether the next days are meant, by the forecast.</param>
/// <param name="AtLeast">The least rain; null is no lower limit.</param>
/// <param name="AtMost">The most rain; null is no upper limit.</param>
public sealed record RainCondition(int Days, bool IsAhead, WaterDepth? AtLeast, WaterDepth? AtMost) : Condition
{
    /// <summary>So little that no gauge knows it [mm]: sums of tenths, and inches as millimetres, come out beside the figure that was meant.</summary>
    private const double RoundingMm = 1e-6;

    /// <inheritdoc/>
    public override bool IsLevel => true;

    /// <inheritdoc/>
    internal override void Judge(SeasonView view, DateOnly first, Span<Verdict> verdicts)
    {
        for (int i = 0; i < verdicts.Length; i++) verdicts[i] = On(RainMm(view, first.AddDays(i)));
    }

    /// <inheritdoc/>
    public override Because Why(SeasonView view, DateOnly day) => new RainBecause(this, day, RainMm(view, day));

    /// <inheritdoc/>
    public override string Explain(ReadersUnits units) => $"{Name} is {LimitWords(units)}";

    /// <summary>What is looked at, in words.</summary>
    internal string Name => IsAhead ? $"the rain forecast for the next {Wording.Days(Days)}" : $"the rain of the last {Wording.Days(Days)}";

    /// <summary>The limits in words.</summary>
    internal string LimitWords(ReadersUnits units) => (AtLeast, AtMost) switch
    {
        ({ } least, { } most) => $"from {Wording.Water(least.Millimetres, units)} to {Wording.Water(most.Millimetres, units)}",
        ({ } least, null) => $"at least {Wording.Water(least.Millimetres, units)}",
        (null, { } most) => $"at most {Wording.Water(most.Millimetres, units)}",
        _ => "of any amount",
    };

    private Verdict On(double rainMm)
    {
        if (double.IsNaN(rainMm)) return Verdict.Unknown;
        bool enough = AtLeast is not { } least || rainMm >= least.Millimetres - RoundingMm;
        bool notTooMuch = AtMost is not { } most || rainMm <= most.Millimetres + RoundingMm;
        return enough && notTooMuch ? Verdict.Yes : Verdict.No;
    }

    private double RainMm(SeasonView view, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(view);
        if (!IsAhead)
        {
            double[] sums = view.Metrics.RainSums(Days);
            int today = view.Metrics.Series.IndexOf(day);
            return (uint)today < (uint)sums.Length ? sums[today] : double.NaN;
        }

        double rain = 0;
        for (int days = 1; days <= Days; days++) rain += view.Metrics.ForecastRainAt(day.AddDays(days));
        return rain;
    }
}

/// <summary>How much rain there was, or is to come.</summary>
/// <param name="Condition">What it was held against.</param>
/// <param name="Day">The day.</param>
/// <param name="RainMm">The rain [mm], NaN where it is not known.</param>
public sealed record RainBecause(RainCondition Condition, DateOnly Day, double RainMm) : Because
{
    /// <inheritdoc/>
    public override string Sentence(ReadersUnits units)
    {
        string why = Condition.IsAhead ? "there is no forecast for it" : "a day without a rain figure is among them";
        return double.IsNaN(RainMm)
            ? $"{Wording.Capital(Condition.Name)} is not known on {Wording.Day(Day)}: {why}."
            : $"{Wording.Capital(Condition.Name)} was {Wording.Water(RainMm, units)} on {Wording.Day(Day)}; {Condition.LimitWords(units)} is looked for.";
    }

    /// <inheritdoc/>
    public override IReadOnlyList<Figure> Figures(ReadersUnits units) => double.IsNaN(RainMm)
        ? []
        : [new Figure(Wording.Capital(Condition.Name), Wording.Water(RainMm, units), Condition.LimitWords(units))];
}
