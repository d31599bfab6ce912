namespace GddWatch.Agronomy.Turf;

/// <summary>Reference evapotranspiration with everything known.</summary>
public static class PenmanMonteith
{
    /// <summary>
    /// Gives ET0 = [0.408·Δ·(Rn − G) + γ·900/(T + 273)·u2·(es − ea)] / [Δ + γ·(1 + 0.34·u2)] [mm/day], never below 0.
    /// <para>Valid for days and months over well-watered short grass; NaN gives NaN.</para>
    /// <para>Source: Allen, Pereira, Raes and Smith 1998, FAO Irrigation and Drainage Paper 56, equation 6 (MEMORY; examples 17 and 18 SEEN through public test suites and CALC).</para>
    /// </summary>
    /// <param name="meanC">Mean air temperature [°C].</param>
    /// <param name="netRadiationMJ">Net radiation Rn [MJ/m²].</param>
    /// <param name="soilHeatMJ">Heat into the soil G [MJ/m²], 0 for a day.</param>
    /// <param name="windMPerS">Wind at 2 m [m/s].</param>
    /// <param name="saturationKPa">Mean saturation vapour pressure es [kPa].</param>
    /// <param name="vapourKPa">Actual vapour pressure ea [kPa].</param>
    /// <param name="psychrometricKPaPerC">Psychrometric constant γ [kPa/°C].</param>
    public static double Mm(
        double meanC, double netRadiationMJ, double soilHeatMJ, double windMPerS, double saturationKPa, double vapourKPa, double psychrometricKPaPerC)
    {
        double slope = VapourPressure.SlopeKPaPerC(meanC);
        double sun = 0.408 * slope * (netRadiationMJ - soilHeatMJ);
        double air = psychrometricKPaPerC * 900.0 / (meanC + 273.0) * windMPerS * (saturationKPa - vapourKPa);
        double evaporated = (sun + air) / (slope + psychrometricKPaPerC * (1.0 + 0.34 * windMPerS));
        return evaporated < 0 ? 0 : evaporated;
    }
}
