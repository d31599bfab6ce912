namespace GddWatch.Agronomy.Turf;

/// <summary>Where the sun stands on a day of the year.</summary>
/// <param name="Distance">Inverse relative distance from the sun, dr.</param>
/// <param name="Declination">Declination of the sun, δ [rad].</param>
/// <param name="SunsetAngle">Hour angle of the sunset, ωs [rad], 0 to π.</param>
/// <param name="Latitude">Latitude φ [rad].</param>
internal readonly record struct SunGeometry(double Distance, double Declination, double SunsetAngle, double Latitude)
{
    /// <summary>
    /// Gives dr = 1 + 0.033·cos(2πJ/365), δ = 0.409·sin(2πJ/365 − 1.39) and ωs = arccos(−tan φ·tan δ), the argument held within −1 and 1 where the sun does not set or not rise.
    /// <para>Source: Allen, Pereira, Raes and Smith 1998, Crop evapotranspiration, FAO Irrigation and Drainage Paper 56, equations 21 to 25 (text MEMORY, example 8 SEEN through
    /// public test suites and CALC).</para>
    /// </summary>
    public static SunGeometry On(double latitudeDegrees, int dayOfYear)
    {
        double latitude = latitudeDegrees * Math.PI / 180.0;
        double angle = 2.0 * Math.PI * dayOfYear / 365.0;
        double declination = 0.409 * Math.Sin(angle - 1.39);
        double sunset = Math.Acos(Math.Clamp(-Math.Tan(latitude) * Math.Tan(declination), -1.0, 1.0));
        return new SunGeometry(1.0 + 0.033 * Math.Cos(angle), declination, sunset, latitude);
    }
}
