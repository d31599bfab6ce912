using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Soil;
using GddWatch.Validation.Weather;

namespace GddWatch.Validation.Fitting;

/// <summary>The default model as the fit sees it: a row of constants. The code that runs is the product's own.</summary>
internal static class TurfSoilFit
{
    private const double AboveZero = 1e-3;
    private static readonly Depth FittedDepth = Depth.FromCentimetres(5);
    private static readonly LayeredTurfSoilCoefficients InCode = new();

    /// <summary>The priors are what similar published models and the physics suggest, wide enough that the data decide.</summary>
    public static IReadOnlyList<FittedConstant> Constants { get; } =
    [
        new(nameof(InCode.SurfaceExchange), InCode.SurfaceExchange, 0.6, 0.3, AboveZero),
        new(nameof(InCode.UpperExchange), InCode.UpperExchange, 0.75, 0.3, AboveZero),
        new(nameof(InCode.MiddleExchange), InCode.MiddleExchange, 0.25, 0.1, AboveZero),
        new(nameof(InCode.LowerExchange), InCode.LowerExchange, 0.07, 0.04, AboveZero),
        new(nameof(InCode.DeepExchange), InCode.DeepExchange, 0.015, 0.007, AboveZero),
        new(nameof(InCode.SunWarming), InCode.SunWarming, 0.3, 0.2),
        new(nameof(InCode.SunWarmingDrySoil), InCode.SunWarmingDrySoil, 0, 0.2),
        new(nameof(InCode.SunWarmingDryClimate), InCode.SunWarmingDryClimate, 0.2, 0.2),
        new(nameof(InCode.SunWarmingHighSun), InCode.SunWarmingHighSun, 0.05, 0.1),
        new(nameof(InCode.SteadyLossC), InCode.SteadyLossC, 0, 3),
        new(nameof(InCode.ClearSkyLoss), InCode.ClearSkyLoss, 1, 0.7),
        new(nameof(InCode.DryClimateLossC), InCode.DryClimateLossC, 0, 3),
        new(nameof(InCode.SnowInsulation), InCode.SnowInsulation, 0.03, 0.02, AboveZero),
        new(nameof(InCode.SnowShade), InCode.SnowShade, 0.4, 0.3, AboveZero),
        new(nameof(InCode.FreezingHeat), InCode.FreezingHeat, 8, 4, AboveZero),
        new(nameof(InCode.DryConduction), InCode.DryConduction, -0.5, 0.4, -0.95),
        new(nameof(InCode.FrostShare), InCode.FrostShare, 0.2, 0.15),
        new(nameof(InCode.MeltMmPerC), InCode.MeltMmPerC, 5, 1.5, AboveZero),
        new(nameof(InCode.StoreMm), InCode.StoreMm, 100, 40),
    ];

    public static double[] ValuesInCode => [.. Constants.Select(constant => constant.InCode)];

    public static double[] PriorMeans => [.. Constants.Select(constant => constant.PriorMean)];

    public static GaussNewton On(IReadOnlyList<MeasuredStation> stations) => new(Constants, stations, EstimateFittedDepth);

    /// <summary>The model with constants in the order of <see cref="Constants"/>.</summary>
    public static LayeredTurfSoil Model(double[] values) => new(new LayeredTurfSoilCoefficients
    {
        SurfaceExchange = values[0],
        UpperExchange = values[1],
        MiddleExchange = values[2],
        LowerExchange = values[3],
        DeepExchange = values[4],
        SunWarming = values[5],
        SunWarmingDrySoil = values[6],
        SunWarmingDryClimate = values[7],
        SunWarmingHighSun = values[8],
        SteadyLossC = values[9],
        ClearSkyLoss = values[10],
        DryClimateLossC = values[11],
        SnowInsulation = values[12],
        SnowShade = values[13],
        FreezingHeat = values[14],
        DryConduction = values[15],
        FrostShare = values[16],
        MeltMmPerC = values[17],
        StoreMm = values[18],
    });

    private static void EstimateFittedDepth(double[] values, MeasuredStation station, double[] meanC)
    {
        var deviationC = new double[meanC.Length];
        Model(values).Estimate(station.Series, station.LatitudeDegrees, FittedDepth, meanC, deviationC);
    }
}
