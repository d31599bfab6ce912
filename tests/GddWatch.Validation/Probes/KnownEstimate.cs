using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Soil;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Validation.Probes;

/// <summary>Stands for a model whose estimate at a station is known already, so that the product's probe correction can work on held-out estimates.</summary>
internal sealed class KnownEstimate(DateOnly firstDay, double[] knownMeanC, double[] knownDeviationC) : ISoilTemperatureModel
{
    public string Name => "Known estimate";

    public void Estimate(DailySeries series, double latitudeDegrees, Depth depth, Span<double> meanC, Span<double> deviationC)
    {
        int from = series.FirstDay.DayNumber - firstDay.DayNumber;
        knownMeanC.AsSpan(from, series.Count).CopyTo(meanC);
        knownDeviationC.AsSpan(from, series.Count).CopyTo(deviationC);
    }
}
