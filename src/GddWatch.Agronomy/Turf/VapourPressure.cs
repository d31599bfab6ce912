namespace GddWatch.Agronomy.Turf;

/// <summary>Pressure of water vapour in the air.</summary>
public static class VapourPressure
{
    /// <summary>
    /// Gives the saturation vapour pressure e°(T) = 0.6108·exp(17.27·T/(T + 237.3)) [kPa].
    /// <para>Valid from about −40 to 60 °C; NaN gives NaN.</para>
    /// <para>Source: Allen et al. 1998, FAO-56, equation 11 (MEMORY; example 3 SEEN through public test suites and CALC).</para>
    /// </summary>
    /// <param name="temperatureC">Air temperature [°C].</param>
    public static double SaturationKPa(double temperatureC) => 0.6108 * Math.Exp(17.27 * temperatureC / (temperatureC + 237.3));

    /// <summary>
    /// Gives a day's mean saturation vapour pressure es = (e°(Tx) + e°(Tn))/2 [kPa]; that of the mean temperature would be too low.
    /// <para>Valid as <see cref="SaturationKPa"/>; NaN gives NaN.</para>
    /// <para>Source: Allen et al. 1998, FAO-56, equation 12 (MEMORY; example 3 SEEN through public test suites and CALC).</para>
    /// </summary>
    /// <param name="minimumC">Lowest air temperature [°C].</param>
    /// <param name="maximumC">Highest air temperature [°C].</param>
    public static double MeanSaturationKPa(double minimumC, double maximumC) => (SaturationKPa(maximumC) + SaturationKPa(minimumC)) / 2.0;

    /// <summary>
    /// Gives the actual vapour pressure from the extremes of relative humidity: ea = (e°(Tn)·RHmax + e°(Tx)·RHmin)/200 [kPa].
    /// <para>Valid for humidities of 0 to 100 %; NaN gives NaN.</para>
    /// <para>Source: Allen et al. 1998, FAO-56, equation 17 (MEMORY; example 5 SEEN through public test suites and CALC).</para>
    /// </summary>
    /// <param name="minimumC">Lowest air temperature [°C].</param>
    /// <param name="maximumC">Highest air temperature [°C].</param>
    /// <param name="highestHumidityPercent">Highest relative humidity [%].</param>
    /// <param name="lowestHumidityPercent">Lowest relative humidity [%].</param>
    public static double FromHumidityExtremesKPa(double minimumC, double maximumC, double highestHumidityPercent, double lowestHumidityPercent) =>
        (SaturationKPa(minimumC) * highestHumidityPercent + SaturationKPa(maximumC) * lowestHumidityPercent) / 200.0;

    /// <summary>
    /// Gives the actual vapour pressure from the mean relative humidity: ea = es·RHmean/100 [kPa].
    /// <para>Valid for humidities of 0 to 100 %; NaN gives NaN.</para>
    /// <para>Source: Allen et al. 1998, FAO-56, equation 19 (MEMORY).</para>
    /// </summary>
    /// <param name="minimumC">Lowest air temperature [°C].</param>
    /// <param name="maximumC">Highest air temperature [°C].</param>
    /// <param name="meanHumidityPercent">Mean relative humidity [%].</param>
    public static double FromMeanHumidityKPa(double minimumC, double maximumC, double meanHumidityPercent) =>
        MeanSaturationKPa(minimumC, maximumC) * meanHumidityPercent / 100.0;

    /// <summary>
    /// Gives the slope of the saturation curve Δ = 4098·e°(T)/(T + 237.3)² [kPa/°C].
    /// <para>Valid as <see cref="SaturationKPa"/>; NaN gives NaN.</para>
    /// <para>Source: Allen et al. 1998, FAO-56, equation 13 (MEMORY, CALC).</para>
    /// </summary>
    /// <param name="meanC">Mean air temperature [°C].</param>
    public static double SlopeKPaPerC(double meanC) => 4098.0 * SaturationKPa(meanC) / ((meanC + 237.3) * (meanC + 237.3));
}
