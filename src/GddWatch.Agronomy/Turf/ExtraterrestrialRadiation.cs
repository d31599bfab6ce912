using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Turf;

/// <summary>The sun's radiation above the air.</summary>
public static class ExtraterrestrialRadiation
{
    /// <summary>
    /// Gives the radiation that a level surface above the air receives on a day [MJ/m²]:
    /// Ra = (1440/π)·0.0820·dr·(ωs·sin φ·sin δ + cos φ·cos δ·sin ωs), with dr = 1 + 0.033·cos(2πJ/365), δ = 0.409·sin(2πJ/365 − 1.39) and
    /// ωs = arccos(−tan φ·tan δ), the argument held within −1 and 1 where the sun does not set or not rise.
    /// <para>Valid everywhere; 0 in the polar night.</para>
    /// <para>Source: Allen, Pereira, Raes and Smith 1998, Crop evapotranspiration, FAO Irrigation and Drainage Paper 56, equations 21 to
    /// 25 (text MEMORY, its example 8 SEEN through public test suites and CALC).</para>
    /// </summary>
    /// <param name="latitudeDegrees">Latitude [°], north positive.</param>
    /// <param name="dayOfYear">Day of the year J [days], 1 to 366.</param>
    /// <returns>Radiation [MJ/m²], 0 or more.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The latitude lies beyond the poles, or no year has such a day.</exception>
    public static double MJPerM2(double latitudeDegrees, int dayOfYear)
    {
        Demand.Within(latitudeDegrees, -90, 90, "latitude [°]");
        Demand.Within(dayOfYear, 1, 366, "day of the year");
        SunGeometry sun = SunGeometry.On(latitudeDegrees, dayOfYear);
        (double sinDeclination, double cosDeclination) = Math.SinCos(sun.Declination);
        (double sinLatitude, double cosLatitude) = Math.SinCos(sun.Latitude);
        double daylight = sun.SunsetAngle * sinLatitude * sinDeclination + cosLatitude * cosDeclination * Math.Sin(sun.SunsetAngle);
        return Math.Max(0.0, 1440.0 / Math.PI * 0.0820 * sun.Distance * daylight);
    }
}
