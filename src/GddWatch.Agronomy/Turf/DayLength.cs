using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Turf;

/// <summary>How long the sun is up.</summary>
public static class DayLength
{
    /// <summary>
    /// Gives the time between sunrise and sunset of the sun's middle, without refraction: N = 24·ωs/π [hours].
    /// <para>Valid everywhere; 0 in the polar night and 24 where the sun does not set. The day that people see is some 8 to 10 minutes longer at middle latitudes.</para>
    /// <para>Source: Allen, Pereira, Raes and Smith 1998, FAO Irrigation and Drainage Paper 56, equation 34 (MEMORY; example 9 SEEN through public test suites and CALC).</para>
    /// </summary>
    /// <param name="latitudeDegrees">Latitude [°], north positive.</param>
    /// <param name="dayOfYear">Day of the year J [days], 1 to 366.</param>
    /// <returns>Day length [hours], 0 to 24.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The latitude lies beyond the poles, or no year has such a day.</exception>
    public static double Hours(double latitudeDegrees, int dayOfYear)
    {
        Demand.Within(latitudeDegrees, -90, 90, "latitude [°]");
        Demand.Within(dayOfYear, 1, 366, "day of the year");
        return 24.0 / Math.PI * SunGeometry.On(latitudeDegrees, dayOfYear).SunsetAngle;
    }
}
