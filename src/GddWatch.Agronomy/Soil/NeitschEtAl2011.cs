using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Agronomy.Soil;

/// <summary>
/// The soil temperature of the watershed model of Neitsch, Arnold, Kiniry and Williams.
/// <para>Deepest damping depth dmax = 1000 + 2500·ρ/(ρ + 686·exp(−5.63·ρ)) [mm]; φ = SW/((0.356 − 0.144·ρ)·z0); dd =
/// dmax·exp(ln(500/dmax)·((1 − φ)/(1 + φ))²).</para>
/// <para>Weight of the yearly mean df = zd/(zd + exp(−0.867 − 2.078·zd)), zd = z/dd. Bare surface Tb = Ta + ε·(Tx − Tn)/2, ε = (0.77·Rs −
/// 14)/20. Cover bcv = max(CV/(CV + exp(7.563 − 1.297·10⁻⁴·CV)), S/(S + exp(6.055 − 0.3002·S))). Surface Ts = bcv·T(yesterday) + (1 −
/// bcv)·Tb. Soil T = 0.8·T(yesterday) + 0.2·(df·(Tyear − Ts) + Ts).</para>
/// <para>Valid for daily means over whole watersheds as published. Here the layer's own temperature stands for the first layer's.</para>
/// <para>Up to 5 missing days in a row are taken from the last known day; NaN for longer holes and for 30 days at the start or after them.
/// Radiation comes from the daily range (Hargreaves), the yearly mean from the days so far, snow from degree-days; unknown precipitation
/// means no snow.</para>
/// <para>Source: Neitsch, Arnold, Kiniry and Williams 2011, Soil and Water Assessment Tool theoretical documentation (equations SEEN in
/// open code and help pages).</para>
/// <para>Constants as published; bulk density 1.4 Mg/m³, 150 mm of water in 1000 mm and 3000 kg/ha of cover assumed. Error at 5 cm, 50
/// stations of the US Climate Reference Network 2010 to 2023: humid RMSE 2.63 °C in the year, 2.91 February to May, 2.03 August to
/// October; all 2.99.</para>
/// </summary>
public sealed class NeitschEtAl2011 : ISoilTemperatureModel
{
    private const int WarmUpDays = 30;
    private const double TypicalErrorC = 2.6;
    private const double BulkDensity = 1.4;
    private const double ProfileMm = 1000;
    private const double WaterMm = 150;
    private const double CoverKgPerHa = 3000;

    /// <inheritdoc/>
    public string Name => "Neitsch et al. 2011";

    /// <summary>Deepest damping depth dmax [mm].</summary>
    /// <param name="bulkDensity">ρ [Mg/m³].</param>
    internal static double DeepestDampingMm(double bulkDensity) =>
        1000.0 + 2500.0 * bulkDensity / (bulkDensity + 686.0 * Math.Exp(-5.63 * bulkDensity));

    /// <summary>Damping depth dd [mm].</summary>
    /// <param name="bulkDensity">ρ [Mg/m³].</param>
    /// <param name="waterMm">Water in the profile SW [mm].</param>
    /// <param name="profileMm">Depth of the profile z0 [mm].</param>
    internal static double DampingMm(double bulkDensity, double waterMm, double profileMm)
    {
        double deepest = DeepestDampingMm(bulkDensity);
        double wetness = waterMm / ((0.356 - 0.144 * bulkDensity) * profileMm);
        double dry = (1.0 - wetness) / (1.0 + wetness);
        return deepest * Math.Exp(Math.Log(500.0 / deepest) * dry * dry);
    }

    /// <summary>Weight df of the yearly mean, 0 to 1.</summary>
    /// <param name="depthMm">Depth z [mm].</param>
    /// <param name="dampingMm">Damping depth dd [mm].</param>
    internal static double WeightOfYear(double depthMm, double dampingMm)
    {
        double relative = depthMm / dampingMm;
        return relative / (relative + Math.Exp(-0.867 - 2.078 * relative));
    }

    /// <summary>Temperature of a bare surface Tb [°C].</summary>
    /// <param name="minimumC">Lowest air temperature [°C].</param>
    /// <param name="maximumC">Highest air temperature [°C].</param>
    /// <param name="solarRadiationMJ">Rs [MJ/m²].</param>
    internal static double BareSurfaceC(double minimumC, double maximumC, double solarRadiationMJ) =>
        (minimumC + maximumC) / 2.0 + (0.77 * solarRadiationMJ - 14.0) / 20.0 * (maximumC - minimumC) / 2.0;

    /// <summary>Weight bcv of yesterday's soil at the surface, 0 to 1.</summary>
    /// <param name="coverKgPerHa">Plants and residue CV [kg/ha].</param>
    /// <param name="snowMm">Snow S [mm of water].</param>
    internal static double Cover(double coverKgPerHa, double snowMm) => Math.Max(
        coverKgPerHa / (coverKgPerHa + Math.Exp(7.563 - 1.297e-4 * coverKgPerHa)),
        snowMm / (snowMm + Math.Exp(6.055 - 0.3002 * snowMm)));

    /// <summary>The day's soil temperature [°C].</summary>
    /// <param name="yesterdayC">Soil of yesterday [°C].</param>
    /// <param name="surfaceC">Surface Ts [°C].</param>
    /// <param name="yearC">Yearly mean of the air [°C].</param>
    /// <param name="weightOfYear">df.</param>
    internal static double StepC(double yesterdayC, double surfaceC, double yearC, double weightOfYear) =>
        0.8 * yesterdayC + 0.2 * (weightOfYear * (yearC - surfaceC) + surfaceC);

    /// <inheritdoc/>
    /// <exception cref="ArgumentOutOfRangeException">The model refuses the weather, the latitude or the depth.</exception>
    public void Estimate(DailySeries series, double latitudeDegrees, Depth depth, Span<double> meanC, Span<double> deviationC)
    {
        SoilDemand.Input(series, latitudeDegrees, depth, meanC, deviationC);
        double weightOfYear = WeightOfYear(depth.Millimetres, DampingMm(BulkDensity, WaterMm, ProfileMm));
        AirDrivenRun.Over(series, latitudeDegrees, new State(weightOfYear), WarmUpDays, TypicalErrorC, meanC, deviationC);
    }

    private struct State(double weightOfYear) : IAirDrivenState
    {
        private YearlyAir year;

        public double SoilC { readonly get; private set; }

        public void Start(in AirDay day)
        {
            year = default;
            year.Add(day.MeanC, day.Latitude.AirWaveC);
            SoilC = day.MeanC;
        }

        public void Step(in AirDay day)
        {
            year.Add(day.MeanC, day.Latitude.AirWaveC);
            double cover = Cover(CoverKgPerHa, day.SnowMm);
            double surface = cover * SoilC + (1.0 - cover) * BareSurfaceC(day.MinimumC, day.MaximumC, day.SolarRadiationMJ);
            SoilC = StepC(SoilC, surface, year.MeanC, weightOfYear);
        }
    }
}
