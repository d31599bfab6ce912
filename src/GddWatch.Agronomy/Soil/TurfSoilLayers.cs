using System.Runtime.CompilerServices;

namespace GddWatch.Agronomy.Soil;

/// <summary>
/// The state of <see cref="LayeredTurfSoil"/> at one site, and its step over one day. Three soil temperatures, snow, wetness, the
/// climate's balance of water, and what stands in for missing air temperatures. Make it with coefficients and step through days in order;
/// the default value has none and cannot step.
/// </summary>
/// <remarks>
/// Where the constants here come from. Half depths of 5, 25 and about 100 cm and the scale of 30 cm between them: the model's own layout.
/// 30 mm of rain a day, the rule for unknown rain (2.5 mm·clip((21 − r)/8, 0.05, 1.5), r the smoothed range), memories of 20 and 80 days,
/// and the start values (range 10 °C, rain 2.5 mm, demand 3 mm, wetness 0.7, soil 1 and deep soil 1.5 °C above the air): set by hand, and not
/// refitted in the folds; their effect fades or is small. The deviation's (0.62, 0.145, 0.93, 30/(n + 6)), the widening where rain is unknown
/// (1.5, from 13 °C over 3 °C) and the variance of missing days (0.8·v + 1, fading by 0.7): chosen so that the stated 80 % range holds about
/// 80 % of days at the fitting stations; not refitted in the folds either, so that the coverage of stations left out is a little
/// flattered.
/// It changes in place for speed: a copy goes its own way. The equations stand at <see cref="LayeredTurfSoil"/>.
/// </remarks>
/// <param name="coefficients">The fitted constants.</param>
internal struct TurfSoilLayers(LayeredTurfSoilCoefficients coefficients)
{
    private const double ShallowCm = 5;
    private const double DepthScaleCm = 30;
    private const double LargestRainMm = 30;
    private const double UsualRainMm = 2.5;
    private const int StartDays = 30;
    private const double WarmerThanAirC = 1.5;
    private const double WideningWithoutRain = 1.5;
    private const double WideningFromRangeC = 13;
    private const double WideningOverRangeC = 3;

    /// <summary>1 − exp(−1/20 d) and 1 − exp(−1/80 d): how fast the departure from the yearly wave, and the daily range, are
    /// followed.</summary>
    private const double DepartureRate = 0.04877057549928599;
    private const double RangeRate = 0.012422199506118559;

    private readonly LayeredTurfSoilCoefficients k = coefficients;
    private int days;
    private int knownDays;
    private double departureC;
    private double departureSumC;
    private double rangeC = 10;
    private double rainBalanceMm = UsualRainMm;
    private double demandBalanceMm = 3;
    private double forcingC;
    private double holeVariance;
    private double rainUnknown;

    /// <summary>Temperature of the layer about 5 cm [°C].</summary>
    public double ShallowC { readonly get; private set; }

    /// <summary>Temperature of the layer about 25 cm [°C].</summary>
    public double MiddleC { readonly get; private set; }

    /// <summary>Temperature of the layer about 1 m [°C].</summary>
    public double DeepC { readonly get; private set; }

    /// <summary>Snow on the ground [mm of water].</summary>
    public double SnowWaterMm { readonly get; private set; }

    /// <summary>Wetness of the rooted soil, 0 dry to 1 wet.</summary>
    public double Wetness { readonly get; private set; } = 0.7;

    /// <summary>The climate's thirst: demand for water as a share of demand and rain, 0 to 1.</summary>
    public double Aridity { readonly get; private set; }

    /// <summary>
    /// Standard deviation of the estimate [°C]: √[(0.62 + 0.145·max(0, F) + 0.93·a)² + 30/(n + 6) + v]·(1 + 1.5·u·clip((r − 13)/3, 0,
    /// 1)), F the warming by sun and sky, a the aridity, n the days since the start, v the variance of missing days, u the share of the last
    /// month's days with unknown precipitation, r the smoothed daily range of the air [°C]: where the air is dry the estimate needs the rain
    /// most.
    /// </summary>
    public readonly double DeviationC
    {
        get
        {
            double steady = 0.62 + 0.145 * Math.Max(forcingC, 0.0) + 0.93 * Aridity;
            double widening = WideningWithoutRain * rainUnknown * Clip((rangeC - WideningFromRangeC) / WideningOverRangeC, 0.0, 1.0);
            return Math.Sqrt(steady * steady + 30.0 / (days + 6) + holeVariance) * (1.0 + widening);
        }
    }

    /// <summary>How far from the shallow towards the middle layer a depth lies, as a share: 1 − exp(−(z − 5)/30); below 0 above 5
    /// cm.</summary>
    /// <param name="depthCm">Depth z [cm].</param>
    public static double ShareOfMiddle(double depthCm) => 1.0 - Math.Exp(-(depthCm - ShallowCm) / DepthScaleCm);

    /// <summary>Temperature where <see cref="ShareOfMiddle"/> is so much [°C].</summary>
    /// <param name="shareOfMiddle">The share of the middle layer.</param>
    public readonly double At(double shareOfMiddle) => ShallowC + shareOfMiddle * (MiddleC - ShallowC);

    /// <summary>Goes one day on.</summary>
    /// <param name="day">The latitude's day of the year.</param>
    /// <param name="minimumC">Lowest air temperature [°C], NaN where missing.</param>
    /// <param name="maximumC">Highest air temperature [°C], NaN where missing.</param>
    /// <param name="precipitationMm">Precipitation [mm], NaN where missing.</param>
    public void Step(in LatitudeDay day, double minimumC, double maximumC, double precipitationMm)
    {
        days++;
        double meanC = (minimumC + maximumC) / 2.0;
        double range = maximumC - minimumC;
        bool known = !double.IsNaN(meanC);
        if (known)
        {
            Follow(meanC - day.AirWaveC, range);
        }
        else
        {
            meanC = day.AirWaveC + departureC;
            range = rangeC;
            holeVariance = 0.8 * holeVariance + 1.0;
        }

        double clearness = Math.Sqrt(range);
        double sunMJ = 0.16 * clearness * day.RadiationMJ;
        double demandMm = 0.0023 * 0.408 / 0.16 * sunMJ * Math.Max(meanC + 17.8, 0.0);
        TakeWater(meanC, Precipitation(precipitationMm), demandMm);

        double dryness = 1.0 - Wetness;
        double warming = k.SunWarming + k.SunWarmingDrySoil * dryness + k.SunWarmingDryClimate * Aridity * dryness
            + k.SunWarmingHighSun * day.RadiationMJ / 40.0;
        forcingC = sunMJ * warming / (1.0 + k.SnowShade * SnowWaterMm)
            - k.SteadyLossC - k.ClearSkyLoss * clearness - k.DryClimateLossC * Aridity;
        if (days == 1) ShallowC = MiddleC = DeepC = meanC > 0.0 ? meanC + 1.0 : 0.0;
        if (knownDays <= StartDays) StartDeep(day, meanC, known);
        Conduct((meanC < 0.0 ? k.FrostShare * meanC : meanC) + forcingC, dryness);
    }

    /// <summary>Follows the air's departure from the latitude's yearly wave, and its daily range, by which missing days are
    /// judged.</summary>
    private void Follow(double departure, double range)
    {
        knownDays++;
        departureC += Math.Max(DepartureRate, 1.0 / knownDays) * (departure - departureC);
        rangeC += Math.Max(RangeRate, 1.0 / (knownDays + 5)) * (range - rangeC);
        holeVariance *= 0.7;
    }

    /// <summary>The day's precipitation, of which a cloudburst only counts in part; where it is not known, what the daily range suggests
    /// of the climate.</summary>
    private double Precipitation(double precipitationMm)
    {
        bool unknown = double.IsNaN(precipitationMm);
        double now = unknown ? 1.0 : 0.0;
        rainUnknown = days == 1 ? now : rainUnknown + (now - rainUnknown) / 30.0;
        return unknown ? UsualRainMm * Clip((21.0 - rangeC) / 8.0, 0.05, 1.5) : Math.Min(precipitationMm, LargestRainMm);
    }

    private void TakeWater(double meanC, double precipitationMm, double demandMm)
    {
        (SnowWaterMm, double waterMm) = SnowByDegreeDays.Step(SnowWaterMm, meanC, precipitationMm, k.MeltMmPerC);
        Wetness = Math.Min(k.StoreMm, Wetness * k.StoreMm + waterMm) / (k.StoreMm + demandMm);
        double rate = days < 305 ? 1.0 / (60 + days) : 1.0 / 365;
        rainBalanceMm += rate * (precipitationMm - rainBalanceMm);
        demandBalanceMm += rate * (demandMm - demandBalanceMm);
        Aridity = demandBalanceMm / (demandBalanceMm + rainBalanceMm);
    }

    /// <summary>In its first month the deep layer has no past: it is put on its yearly wave about the mean that the days so far
    /// suggest.</summary>
    private void StartDeep(in LatitudeDay day, double meanC, bool known)
    {
        if (known) departureSumC += meanC - day.AirWaveC;
        DeepC = (knownDays > 0 ? departureSumC / knownDays : departureC) + day.DeepWaveC + WarmerThanAirC;
    }

    private void Conduct(double surfaceC, double dryness)
    {
        double exchange = k.SurfaceExchange / (1.0 + k.SnowInsulation * SnowWaterMm);
        double conduction = 1.0 + k.DryConduction * dryness;
        double upper = k.UpperExchange * conduction;
        double middle = k.MiddleExchange * conduction;
        double shallowCapacity = Capacity(ShallowC);
        double middleCapacity = Capacity(MiddleC);
        ShallowC = (shallowCapacity * ShallowC + exchange * surfaceC + upper * MiddleC) / (shallowCapacity + exchange + upper);
        MiddleC = (middleCapacity * MiddleC + middle * ShallowC + k.LowerExchange * DeepC) / (middleCapacity + middle + k.LowerExchange);
        DeepC += k.DeepExchange * (MiddleC - DeepC);
    }

    /// <summary>Heat capacity with the freezing of the soil's water in it, which holds wet soil near 0 °C for weeks.</summary>
    private readonly double Capacity(double temperatureC)
    {
        double offset = temperatureC / k.FreezingWidthC;
        return 1.0 + k.FreezingHeat / (1.0 + offset * offset);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double Clip(double value, double lowest, double highest) => Math.Min(highest, Math.Max(lowest, value));
}
