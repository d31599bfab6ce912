using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Agronomy.Soil;

/// <summary>
/// The daily step of Lindström and others.
/// <para>T = (1 − wa − wd)·T(yesterday) + wa·Ta + wd·Tdeep, wa = 1/(c1 + c2·S), S snow [mm of water].</para>
/// <para>Valid for shallow soil; here fitted at 5 cm, and it does not depend on depth. Tdeep is the mean of the air over about a year plus
/// a constant, our addition.</para>
/// <para>Up to 5 missing days in a row are taken from the last known day; NaN for longer holes and for 30 days at the start or after them.
/// Unknown precipitation means no snow.</para>
/// <para>Source: Lindström, Bishop and Ottosson Löfvenius 2002, Soil frost and runoff at Svartberget, northern Sweden, Hydrological
/// Processes 16 (form SEEN in open code; title MEMORY).</para>
/// <para>c1 = 4.711 days, c2 = 0.339 days/mm, wd = 0.0209 a day, Tdeep 10.95 °C above the year's air (its pull stands for the sun), fitted
/// at 5 cm over 50 stations of the US Climate Reference Network 2010 to 2023 (dry ones weigh 0.4). Error at the same stations: humid RMSE
/// 2.06 °C in the year, 2.25 February to May, 1.68 August to October; all 2.52.</para>
/// </summary>
public sealed class LindstromEtAl2002 : ISoilTemperatureModel
{
    private const int WarmUpDays = 30;
    private const double TypicalErrorC = 2.1;
    private const double BareDays = 4.711;
    private const double SnowDaysPerMm = 0.3394;
    private const double PullOfDeep = 0.02093;
    private const double DeepAboveAirC = 10.95;

    /// <inheritdoc/>
    public string Name => "Lindström et al. 2002";

    /// <summary>One day by the equation above [°C].</summary>
    /// <param name="yesterdayC">Soil of yesterday [°C].</param>
    /// <param name="airC">Mean air temperature [°C].</param>
    /// <param name="deepC">Tdeep [°C].</param>
    /// <param name="pullOfAir">wa [1/day].</param>
    /// <param name="pullOfDeep">wd [1/day].</param>
    internal static double StepC(double yesterdayC, double airC, double deepC, double pullOfAir, double pullOfDeep) =>
        (1.0 - pullOfAir - pullOfDeep) * yesterdayC + pullOfAir * airC + pullOfDeep * deepC;

    /// <inheritdoc/>
    /// <exception cref="ArgumentOutOfRangeException">The model refuses the weather, the latitude or the depth.</exception>
    public void Estimate(DailySeries series, double latitudeDegrees, Depth depth, Span<double> meanC, Span<double> deviationC)
    {
        SoilDemand.Input(series, latitudeDegrees, depth, meanC, deviationC);
        AirDrivenRun.Over(series, latitudeDegrees, default(State), WarmUpDays, TypicalErrorC, meanC, deviationC);
    }

    private struct State : IAirDrivenState
    {
        private int days;
        private double yearC;

        public double SoilC { readonly get; private set; }

        public void Start(in AirDay day)
        {
            days = 1;
            SoilC = yearC = day.MeanC;
        }

        public void Step(in AirDay day)
        {
            days++;
            yearC += Math.Max(1.0 / 365, 1.0 / days) * (day.MeanC - yearC);
            SoilC = StepC(SoilC, day.MeanC, yearC + DeepAboveAirC, 1.0 / (BareDays + SnowDaysPerMm * day.SnowMm), PullOfDeep);
        }
    }
}
