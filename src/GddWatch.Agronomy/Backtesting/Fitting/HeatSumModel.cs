using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Backtesting.Fitting;

/// <summary>The date on which a heat sum reaches a threshold; the second constant is the base temperature.</summary>
/// <param name="Sum">Method, cutoff, start, depth; the base in it is replaced by each that is tried.</param>
public sealed record HeatSumModel(HeatSumDefinition Sum) : DateModel
{
    private const double ColdestBaseC = -2, WarmestBaseC = 15, BaseStepC = 0.5;

    /// <summary>From −2 to 15 °C in steps of half a degree, below the upper threshold where there is one; outside nothing is known to develop (DESIGN).</summary>
    public override IReadOnlyList<double> Grid =>
        [.. Enumerable.Range(0, (int)((WarmestBaseC - ColdestBaseC) / BaseStepC) + 1).Select(i => ColdestBaseC + i * BaseStepC).Where(baseC => Sum.Upper is not { } upper || baseC < upper.Celsius)];

    /// <inheritdoc/>
    public override string GridName => "base [°C]";

    /// <inheritdoc/>
    public override double ThresholdStep => 2;

    /// <inheritdoc/>
    public override string ThresholdUnit => "°C-days";

    /// <inheritdoc/>
    public override bool Falls => false;

    /// <inheritdoc/>
    public override double[] Column(SiteMetrics metrics, double gridValue)
    {
        ArgumentNullException.ThrowIfNull(metrics);
        return metrics.HeatSumColumn(Sum with { Base = Temperature.FromCelsius(gridValue) });
    }

    /// <inheritdoc/>
    public override Condition ToCondition(double gridValue, double threshold) =>
        new HeatSumCondition(Sum with { Base = Temperature.FromCelsius(gridValue) }, DegreeDays.FromCelsiusDays(threshold));
}
