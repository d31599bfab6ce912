using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Soil;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Validation.Scoring;

/// <summary>The running mean of the air's (maximum + minimum)/2, which people use in place of soil temperature today. It states no uncertainty.</summary>
internal sealed class AirMean(int days) : ISoilTemperatureModel
{
    public string Name => days == 1 ? "Air, mean of the day" : $"Air, {days}-day mean";

    public void Estimate(DailySeries series, double latitudeDegrees, Depth depth, Span<double> meanC, Span<double> deviationC)
    {
        ReadOnlySpan<double> minimum = series.MinimumAirC, maximum = series.MaximumAirC;
        deviationC.Fill(double.NaN);
        for (int i = 0; i < meanC.Length; i++)
        {
            double sum = 0;
            int known = 0;
            for (int j = Math.Max(0, i - days + 1); j <= i; j++)
            {
                double middle = (minimum[j] + maximum[j]) / 2;
                if (double.IsNaN(middle)) continue;
                sum += middle;
                known++;
            }

            meanC[i] = known >= days - 1 && known > 0 ? sum / known : double.NaN;
        }
    }
}
