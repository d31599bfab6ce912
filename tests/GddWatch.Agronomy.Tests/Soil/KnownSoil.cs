using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Soil;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Agronomy.Tests.Soil;

/// <summary>Columns that a model gave for a whole record, handed out again for a part of it: estimating each part anew would take hours and start
/// cold.</summary>
internal sealed class KnownSoil(DateOnly firstDay, SoilTemperatureColumns columns) : ISoilTemperatureModel
{
    public string Name => "Known soil";

    public void Estimate(DailySeries series, double latitudeDegrees, Depth depth, Span<double> meanC, Span<double> deviationC)
    {
        int from = series.FirstDay.DayNumber - firstDay.DayNumber;
        columns.MeanC.AsSpan(from, series.Count).CopyTo(meanC);
        columns.DeviationC.AsSpan(from, series.Count).CopyTo(deviationC);
    }
}
