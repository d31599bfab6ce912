using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Agronomy.Soil;

/// <summary>
/// The model of Potter and Williams for near-surface soil under residue.
/// <para>Surface of a dry day X = w·(Tx − Ta) + Ta + 2, of a wet one X = w·(Ta − Tn) + Tn, w the share of wet days in the last 30; mean
/// over 5 days X̅. Cover bcv = max(CV/(CV + exp(5.3396 − 2.3951·CV)), S/(S + exp(2.303 − 0.2197·S))). Ts = min(X̅, (1 − bcv)·X̅ +
/// bcv·X̅(yesterday)). Soil T = 0.5·T(yesterday) + 0.5·(df·(Tyear − Ts) + Ts), df as in <see cref="NeitschEtAl2011"/>.</para>
/// <para>Valid for arable soils as published. A day is wet from 0.5 mm on.</para>
/// <para>Up to 5 missing days in a row are taken from the last known day; NaN for longer holes and for 30 days at the start or after them.
/// Unknown precipitation makes dry days without snow. The yearly mean comes from the days so far.</para>
/// <para>Source: Potter and Williams 1994, Predicting daily mean soil temperatures in the EPIC simulation model, Agronomy Journal
/// 86:1006-1011 (equations SEEN in open code; title and pages MEMORY).</para>
/// <para>Constants as published; cover 2 t/ha assumed, soil as in <see cref="NeitschEtAl2011"/>. Error at 5 cm, 50 stations of the US
/// Climate Reference Network 2010 to 2023: humid RMSE 3.35 °C in the year, 3.69 February to May, 2.28 August to October; all 3.51.</para>
/// </summary>
public sealed class PotterWilliams1994 : ISoilTemperatureModel
{
    private const int WarmUpDays = 30;
    private const double TypicalErrorC = 3.4;
    private const double WetDayMm = 0.5;
    private const double CoverTPerHa = 2;

    /// <inheritdoc/>
    public string Name => "Potter and Williams 1994";

    /// <summary>Temperature X of the surface of one day [°C].</summary>
    /// <param name="minimumC">Lowest air temperature [°C].</param>
    /// <param name="maximumC">Highest air temperature [°C].</param>
    /// <param name="wetShare">Share of wet days w, 0 to 1.</param>
    /// <param name="wet">Whether this day is wet.</param>
    internal static double SurfaceOfDayC(double minimumC, double maximumC, double wetShare, bool wet)
    {
        double mean = (minimumC + maximumC) / 2.0;
        return wet ? wetShare * (mean - minimumC) + minimumC : wetShare * (maximumC - mean) + mean + 2.0;
    }

    /// <summary>Weight bcv of yesterday's surface, 0 to 1.</summary>
    /// <param name="coverTPerHa">Plants and residue CV [t/ha].</param>
    /// <param name="snowMm">Snow S [mm of water].</param>
    internal static double Cover(double coverTPerHa, double snowMm) => Math.Max(
        coverTPerHa / (coverTPerHa + Math.Exp(5.3396 - 2.3951 * coverTPerHa)),
        snowMm / (snowMm + Math.Exp(2.303 - 0.2197 * snowMm)));

    /// <inheritdoc/>
    /// <exception cref="ArgumentOutOfRangeException">The model refuses the weather, the latitude or the depth.</exception>
    public void Estimate(DailySeries series, double latitudeDegrees, Depth depth, Span<double> meanC, Span<double> deviationC)
    {
        SoilDemand.Input(series, latitudeDegrees, depth, meanC, deviationC);
        double weightOfYear = NeitschEtAl2011.WeightOfYear(depth.Millimetres, NeitschEtAl2011.DampingMm(1.4, 150, 1000));
        AirDrivenRun.Over(series, latitudeDegrees, new State(weightOfYear), WarmUpDays, TypicalErrorC, meanC, deviationC);
    }

    private struct State(double weightOfYear) : IAirDrivenState
    {
        private YearlyAir year;
        private LastDays wet;
        private LastDays surface;
        private double yesterdaysSurfaceC;

        public double SoilC { readonly get; private set; }

        public void Start(in AirDay day)
        {
            year = default;
            wet = default;
            surface = default;
            yesterdaysSurfaceC = double.NaN;
            SoilC = day.MeanC;
            Step(day);
        }

        public void Step(in AirDay day)
        {
            year.Add(day.MeanC, day.Latitude.AirWaveC);
            bool isWet = day.PrecipitationMm >= WetDayMm;
            wet.Add(isWet ? 1.0 : 0.0);
            surface.Add(SurfaceOfDayC(day.MinimumC, day.MaximumC, wet.Mean(30), isWet));
            double mean = surface.Mean(5);
            if (double.IsNaN(yesterdaysSurfaceC)) yesterdaysSurfaceC = mean;
            double cover = Cover(CoverTPerHa, day.SnowMm);
            double covered = Math.Min(mean, (1.0 - cover) * mean + cover * yesterdaysSurfaceC);
            yesterdaysSurfaceC = mean;
            SoilC = 0.5 * SoilC + 0.5 * (weightOfYear * (year.MeanC - covered) + covered);
        }
    }
}
