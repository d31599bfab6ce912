using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Agronomy.Soil;

/// <summary>
/// The model of Zheng, Hunt and Running for continental applications.
/// <para>F(J) = E(J) + m·(Ta(J) − Ta(J−1)), E(J) = a + b·(mean of Ta over the 11 days that end on J); m = 0.25, with snow 0.10.</para>
/// <para>Valid for 10 cm as published; it does not depend on depth.</para>
/// <para>Up to 5 missing days in a row are taken from the last known day; NaN for longer holes and for 10 days at the start or after them.
/// Unknown precipitation means no snow.</para>
/// <para>Source: Zheng, Hunt and Running 1993, A daily soil temperature model based on air temperature and precipitation for continental
/// applications, Climate Research 2:183-191 (abstract and the step with both m SEEN). Its regional a and b were not found; the shading by
/// leaves is left out.</para>
/// <para>a = 3.238 °C, b = 0.8875 fitted at 5 cm by least squares over 50 stations of the US Climate Reference Network 2010 to 2023 (dry
/// ones weigh 0.4). Error at these same stations, none left out: humid RMSE 2.67 °C in the year, 2.91 February to May, 2.05 August to
/// October; all 2.99.</para>
/// </summary>
/// <param name="interceptC">a [°C].</param>
/// <param name="slope">b.</param>
/// <exception cref="ArgumentOutOfRangeException">a or b is not finite.</exception>
public sealed class ZhengHuntRunning1993(double interceptC = 3.238, double slope = 0.8875) : ISoilTemperatureModel
{
    private readonly double interceptC = Demand.Finite(interceptC, "intercept a [°C]");
    private readonly double slope = Demand.Finite(slope, "slope b");

    private const int MeanDays = 11;
    private const double StepBare = 0.25;
    private const double StepSnow = 0.10;
    private const double SnowMm = 2;
    private const double TypicalErrorC = 2.7;

    /// <inheritdoc/>
    public string Name => "Zheng, Hunt and Running 1993";

    /// <inheritdoc/>
    /// <exception cref="ArgumentOutOfRangeException">The model refuses the weather, the latitude or the depth.</exception>
    public void Estimate(DailySeries series, double latitudeDegrees, Depth depth, Span<double> meanC, Span<double> deviationC)
    {
        SoilDemand.Input(series, latitudeDegrees, depth, meanC, deviationC);
        AirDrivenRun.Over(series, latitudeDegrees, new State(interceptC, slope), MeanDays - 1, TypicalErrorC, meanC, deviationC);
    }

    private struct State(double interceptC, double slope) : IAirDrivenState
    {
        private LastDays air;
        private bool snow;

        public readonly double SoilC =>
            interceptC + slope * air.Mean(MeanDays) + (snow ? StepSnow : StepBare) * (air.Back(0) - air.Back(1));

        public void Start(in AirDay day)
        {
            air = default;
            Step(day);
        }

        public void Step(in AirDay day)
        {
            air.Add(day.MeanC);
            snow = day.SnowMm > SnowMm;
        }
    }
}
