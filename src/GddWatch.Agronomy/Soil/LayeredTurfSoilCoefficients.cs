using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Soil;

/// <summary>
/// The fitted constants of <see cref="LayeredTurfSoil"/>. The values here are the model's own; a fitting tool may try others.
/// <para>Fitted on the daily mean at 5 cm measured at 50 stations of the US Climate Reference Network, product CRND0103 (daily), 2010 to
/// 2023, 235 971 station days, by the tool soil-fit of tests/GddWatch.Validation: least squares with station weights (humid 1, dry 0.4,
/// divided by 1 + (rmse/1.4 °C)⁴) and a weak prior on each constant. The set is one for all stations; nothing is fitted to a single
/// one.</para>
/// <para>Error at stations left out of the fit (leave one station out, all days with a measurement, pooled): humid stations RMSE 1.44 °C
/// in the year, 1.44 February to May, 1.39 August to October, bias −0.03, −0.01, −0.07; all stations 1.52. Without precipitation: humid
/// 1.50, 1.54, 1.38; all 1.77. At 10 cm 1.44, 1.42, 1.39 and 1.52; at 20 cm 1.30, 1.33, 1.25 at humid stations. The tool soil-report
/// measures these again. The number after ± is the standard error of the constant by the jackknife over stations, as soil-fit prints
/// it.</para>
/// <para>A constant that is NaN or infinite is refused by an ArgumentOutOfRangeException with its name.</para>
/// </summary>
public sealed record LayeredTurfSoilCoefficients
{
    /// <summary>g: exchange of the 5 cm layer with the surface, as a share of the layer's own heat capacity [1/day]; 0.619 ±
    /// 0.029.</summary>
    public double SurfaceExchange { get; init => field = Demand.Finite(value, nameof(SurfaceExchange)); } = 0.619;

    /// <summary>h12: exchange of the 5 cm layer with the 25 cm layer, for the former [1/day]; 0.702 ± 0.041.</summary>
    public double UpperExchange { get; init => field = Demand.Finite(value, nameof(UpperExchange)); } = 0.702;

    /// <summary>h2: the same exchange, for the thicker 25 cm layer [1/day]; 0.238 ± 0.016.</summary>
    public double MiddleExchange { get; init => field = Demand.Finite(value, nameof(MiddleExchange)); } = 0.238;

    /// <summary>h23: exchange of the 25 cm layer with the deep layer, for the former [1/day]; 0.0728 ± 0.0088.</summary>
    public double LowerExchange { get; init => field = Demand.Finite(value, nameof(LowerExchange)); } = 0.0728;

    /// <summary>h3: the same exchange, for the deep layer [1/day]; 0.01397 ± 0.0011.</summary>
    public double DeepExchange { get; init => field = Demand.Finite(value, nameof(DeepExchange)); } = 0.01397;

    /// <summary>s0: warming of the surface above the air by the sun [°C per MJ/m²]; 0.2802 ± 0.035.</summary>
    public double SunWarming { get; init => field = Demand.Finite(value, nameof(SunWarming)); } = 0.2802;

    /// <summary>s2: change of that warming where the soil is dry: parched turf shades and reflects more [°C per MJ/m²]; −0.2393 ±
    /// 0.053.</summary>
    public double SunWarmingDrySoil { get; init => field = Demand.Finite(value, nameof(SunWarmingDrySoil)); } = -0.2393;

    /// <summary>s3: change of it where the soil is dry in a dry climate: open ground does not transpire [°C per MJ/m²]; 0.4351 ±
    /// 0.082.</summary>
    public double SunWarmingDryClimate { get; init => field = Demand.Finite(value, nameof(SunWarmingDryClimate)); } = 0.4351;

    /// <summary>sR: change of it with the height of the sun, for each 40 MJ/m² above the air [°C per MJ/m²]; 0.0757 ± 0.019.</summary>
    public double SunWarmingHighSun { get; init => field = Demand.Finite(value, nameof(SunWarmingHighSun)); } = 0.0757;

    /// <summary>l0: loss of the surface to the sky that is always there [°C]; below zero, so a gain; −1.579 ± 0.48.</summary>
    public double SteadyLossC { get; init => field = Demand.Finite(value, nameof(SteadyLossC)); } = -1.579;

    /// <summary>l1: loss through clear sky, with the root of the day's range of the air [°C per √°C]; 1.299 ± 0.2.</summary>
    public double ClearSkyLoss { get; init => field = Demand.Finite(value, nameof(ClearSkyLoss)); } = 1.299;

    /// <summary>l2: loss in a dry climate, with the aridity from 0 to 1 [°C]; 2.460 ± 0.79.</summary>
    public double DryClimateLossC { get; init => field = Demand.Finite(value, nameof(DryClimateLossC)); } = 2.460;

    /// <summary>kS: how snow hinders the exchange with the surface [1/mm of water]; 0.0299 ± 0.0043.</summary>
    public double SnowInsulation { get; init => field = Demand.Finite(value, nameof(SnowInsulation)); } = 0.0299;

    /// <summary>rS: how snow keeps the sun out [1/mm of water]; 0.4315 ± 0.044.</summary>
    public double SnowShade { get; init => field = Demand.Finite(value, nameof(SnowShade)); } = 0.4315;

    /// <summary>f: the heat of freezing at 0 °C, in heat capacities of the layer [1]; 8.829 ± 1.3.</summary>
    public double FreezingHeat { get; init => field = Demand.Finite(value, nameof(FreezingHeat)); } = 8.829;

    /// <summary>Half width of the range about 0 °C in which soil water freezes [°C]; 0.6, set by hand.</summary>
    public double FreezingWidthC { get; init => field = Demand.Finite(value, nameof(FreezingWidthC)); } = 0.6;

    /// <summary>hD: change of the exchange between layers in dry soil, which conducts less [1]; −0.7374 ± 0.14.</summary>
    public double DryConduction { get; init => field = Demand.Finite(value, nameof(DryConduction)); } = -0.7374;

    /// <summary>nA: share of the air's frost that reaches the surface under grass and rime [1]; 0.2963 ± 0.031.</summary>
    public double FrostShare { get; init => field = Demand.Finite(value, nameof(FrostShare)); } = 0.2963;

    /// <summary>Melting of snow for each degree of the day's mean above 0 °C [mm/°C]; 5.199 ± 0.27.</summary>
    public double MeltMmPerC { get; init => field = Demand.Finite(value, nameof(MeltMmPerC)); } = 5.199;

    /// <summary>W: water that the rooted soil holds between wet and dry [mm]; 116.4 ± 13.</summary>
    public double StoreMm { get; init => field = Demand.Finite(value, nameof(StoreMm)); } = 116.4;
}
