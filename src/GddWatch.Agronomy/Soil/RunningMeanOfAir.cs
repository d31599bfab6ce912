using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Agronomy.Soil;

/// <summary>
/// The mean of the air over the last days, taken for the soil: what many people use, and what every model has to beat.
/// <para>T = mean of (Tn + Tx)/2 over the last n days, that day included.</para>
/// <para>It knows nothing of sun, snow or depth, and is on average 1.9 °C colder than the soil at 5 cm at humid stations.</para>
/// <para>Up to 5 missing days in a row are taken from the last known day; NaN for longer holes and until n days are known after
/// them.</para>
/// <para>Source: common practice of extension services; science reference 2.7 (CALC).</para>
/// <para>Error at 5 cm, 50 stations of the US Climate Reference Network 2010 to 2023, n = 5: humid stations RMSE 3.62 °C in the year, 3.85
/// February to May, 2.34 August to October; all stations 3.86. Nothing is fitted.</para>
/// </summary>
/// <param name="days">Over how many days n [days], 1 to 30.</param>
public sealed class RunningMeanOfAir(int days = 5) : ISoilTemperatureModel
{
    private const double TypicalErrorC = 3.6;

    private readonly int days = (int)Demand.Within(days, 1, 30, "days of the running mean [days]");

    /// <inheritdoc/>
    public string Name => $"Mean of the air over {days} days";

    /// <inheritdoc/>
    /// <exception cref="ArgumentOutOfRangeException">The model refuses the weather, the latitude or the depth.</exception>
    public void Estimate(DailySeries series, double latitudeDegrees, Depth depth, Span<double> meanC, Span<double> deviationC)
    {
        SoilDemand.Input(series, latitudeDegrees, depth, meanC, deviationC);
        AirDrivenRun.Over(series, latitudeDegrees, new State(days), days - 1, TypicalErrorC, meanC, deviationC);
    }

    private struct State(int days) : IAirDrivenState
    {
        private LastDays air;

        public readonly double SoilC => air.Mean(days);

        public void Start(in AirDay day)
        {
            air = default;
            air.Add(day.MeanC);
        }

        public void Step(in AirDay day) => air.Add(day.MeanC);
    }
}
