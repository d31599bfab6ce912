using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Backtesting.Fitting;

/// <summary>The date on which a running mean of temperature has passed a threshold, and been past it for as long as it must be held; the second constant is over how many days is averaged.</summary>
/// <param name="SoilDepth">The depth of the soil; null looks at an air temperature.</param>
/// <param name="Air">Which air temperature, where the air is looked at.</param>
/// <param name="Passing">From which side.</param>
/// <param name="Holding">How long it must be held.</param>
public sealed record RunningMeanModel(Depth? SoilDepth, AirValue Air, Passing Passing, Holding Holding) : DateModel
{
    private static readonly double[] Days = [1, 2, 3, 5, 7, 10, 14, 21, 30];

    /// <inheritdoc/>
    public override IReadOnlyList<double> Grid => Days;

    /// <inheritdoc/>
    public override string GridName => "mean over [days]";

    /// <inheritdoc/>
    public override double ThresholdStep => 0.25;

    /// <inheritdoc/>
    public override string ThresholdUnit => "°C";

    /// <inheritdoc/>
    public override bool Falls => Passing == Passing.FallsBelow;

    /// <inheritdoc/>
    public override double[] Column(SiteMetrics metrics, double gridValue)
    {
        ArgumentNullException.ThrowIfNull(metrics);
        double[] means = SoilDepth is { } depth ? metrics.SoilMeans(depth, (int)gridValue) : metrics.AirMeans(Air, (int)gridValue);
        return Holding.OfDays == 1 ? means : Held(means);
    }

    /// <inheritdoc/>
    public override Condition ToCondition(double gridValue, double threshold)
    {
        Temperature temperature = Temperature.FromCelsius(threshold);
        if (SoilDepth is { } depth) return new SoilTemperatureCondition(depth, (int)gridValue, Passing, temperature, Holding);
        return new AirTemperatureCondition(Air, (int)gridValue, Falls ? null : temperature, Falls ? temperature : null, Holding);
    }

    /// <summary>What the mean has been past on as many of the last days as it must be: the k-th warmest of the last n (the k-th coldest where it falls).</summary>
    private double[] Held(double[] means)
    {
        var held = new double[means.Length];
        var last = new double[Holding.OfDays];
        for (int day = 0; day < means.Length; day++)
        {
            held[day] = double.NaN;
            if (day < last.Length - 1) continue;
            Array.Copy(means, day - last.Length + 1, last, 0, last.Length);
            if (last.Any(double.IsNaN)) continue;
            Array.Sort(last);
            held[day] = Falls ? last[Holding.Days - 1] : last[^Holding.Days];
        }

        return held;
    }
}
