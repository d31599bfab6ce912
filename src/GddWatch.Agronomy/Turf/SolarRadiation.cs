namespace GddWatch.Agronomy.Turf;

/// <summary>The sun's radiation on a level surface at the ground.</summary>
public static class SolarRadiation
{
    /// <summary>The coefficient for places inland [°C^-0.5]. Source: Allen et al. 1998, FAO-56, equation 50 (MEMORY; example 15 SEEN).</summary>
    public const double InlandCoefficient = 0.16;

    /// <summary>The coefficient for places on a coast [°C^-0.5]. Source: Allen et al. 1998, FAO-56, equation 50 (MEMORY).</summary>
    public const double CoastCoefficient = 0.19;

    /// <summary>
    /// Gives the radiation from the hours of sunshine: Rs = (0.25 + 0.50·n/N)·Ra [MJ/m²].
    /// <para>Valid for n from 0 to N; 0 in the polar night, where N is 0. NaN gives NaN.</para>
    /// <para>Source: Allen et al. 1998, FAO-56, equation 35 (MEMORY; example 10 SEEN through public test suites and CALC).</para>
    /// </summary>
    /// <param name="sunshineHours">Hours of sunshine n [h].</param>
    /// <param name="dayLengthHours">Day length N [h].</param>
    /// <param name="aboveAirMJ">Radiation above the air Ra [MJ/m²].</param>
    public static double FromSunshineMJ(double sunshineHours, double dayLengthHours, double aboveAirMJ) =>
        dayLengthHours == 0 ? 0 : (0.25 + 0.50 * sunshineHours / dayLengthHours) * aboveAirMJ;

    /// <summary>
    /// Gives the radiation from the day's range of temperature: Rs = kRs·√(Tx − Tn)·Ra [MJ/m²]. On days with a wide range it may exceed a clear sky's, which the caller limits.
    /// <para>Valid for whole days at places where the air is not moved from elsewhere; NaN gives NaN.</para>
    /// <para>Source: Allen et al. 1998, FAO-56, equation 50 (MEMORY; example 15 SEEN through public test suites and CALC).</para>
    /// </summary>
    /// <param name="minimumC">Lowest air temperature [°C].</param>
    /// <param name="maximumC">Highest air temperature [°C].</param>
    /// <param name="aboveAirMJ">Radiation above the air Ra [MJ/m²].</param>
    /// <param name="coefficient">The coefficient kRs [°C^-0.5].</param>
    public static double FromTemperaturesMJ(double minimumC, double maximumC, double aboveAirMJ, double coefficient = InlandCoefficient) =>
        coefficient * Math.Sqrt(maximumC - minimumC) * aboveAirMJ;

    /// <summary>
    /// Gives the radiation under a clear sky: Rso = (0.75 + 0.00002·z)·Ra [MJ/m²].
    /// <para>Valid for heights up to 6000 m.</para>
    /// <para>Source: Allen et al. 1998, FAO-56, equation 37 (MEMORY; example 18 SEEN through public test suites and CALC).</para>
    /// </summary>
    /// <param name="elevationM">Height above the sea [m].</param>
    /// <param name="aboveAirMJ">Radiation above the air Ra [MJ/m²].</param>
    public static double ClearSkyMJ(double elevationM, double aboveAirMJ) => (0.75 + 2e-5 * elevationM) * aboveAirMJ;
}
