using GddWatch.Agronomy.Turf;
using Xunit;

namespace GddWatch.Agronomy.Tests.Turf;

/// <summary>
/// Day length against an independent library: PyEphem 4 for 2023 at longitude 0, middle of the disc on the horizon, no refraction (figures computed with it, CALC). FAO-56 takes the declination from one
/// sine a year, which is up to about 1° off around the equinoxes: some 8 minutes of day length at middle latitudes, 17 at 60°. That is the formula's own error, and the tolerance here.
/// </summary>
public sealed class SunGeometryTests
{
    [Theory]
    [InlineData(-41, 79, -0.154, 12.015)]
    [InlineData(-41, 102, 8.691, 10.980)]
    [InlineData(-41, 172, 23.441, 9.049)]
    [InlineData(-41, 222, 15.554, 10.132)]
    [InlineData(-41, 265, 0.307, 11.961)]
    [InlineData(-41, 307, -15.063, 13.803)]
    [InlineData(-41, 355, -23.436, 14.956)]
    [InlineData(0, 79, -0.155, 11.997)]
    [InlineData(0, 102, 8.689, 11.998)]
    [InlineData(0, 172, 23.439, 12.001)]
    [InlineData(0, 222, 15.552, 11.998)]
    [InlineData(0, 265, 0.305, 11.997)]
    [InlineData(0, 307, -15.065, 12.000)]
    [InlineData(0, 355, -23.438, 12.004)]
    [InlineData(30.6, 79, -0.156, 11.985)]
    [InlineData(30.6, 102, 8.688, 12.689)]
    [InlineData(30.6, 172, 23.438, 13.982)]
    [InlineData(30.6, 222, 15.551, 13.261)]
    [InlineData(30.6, 265, 0.304, 12.021)]
    [InlineData(30.6, 307, -15.066, 10.779)]
    [InlineData(30.6, 355, -23.439, 10.022)]
    [InlineData(41.6, 79, -0.157, 11.979)]
    [InlineData(41.6, 102, 8.688, 13.037)]
    [InlineData(41.6, 172, 23.438, 15.020)]
    [InlineData(41.6, 222, 15.551, 13.905)]
    [InlineData(41.6, 265, 0.304, 12.033)]
    [InlineData(41.6, 307, -15.066, 10.157)]
    [InlineData(41.6, 355, -23.439, 8.984)]
    [InlineData(60, 79, -0.157, 11.962)]
    [InlineData(60, 102, 8.687, 14.043)]
    [InlineData(60, 172, 23.437, 18.491)]
    [InlineData(60, 222, 15.550, 15.840)]
    [InlineData(60, 265, 0.303, 12.067)]
    [InlineData(60, 307, -15.066, 8.295)]
    [InlineData(60, 355, -23.439, 5.512)]
    public void Day_length_agrees_with_an_astronomical_library(double latitude, int dayOfYear, double declinationDegrees, double hours)
    {
        Assert.Equal(hours, DayLength.Hours(latitude, dayOfYear), Math.Abs(latitude) > 50 ? 0.3 : 0.15);
        Assert.Equal(declinationDegrees, SunGeometry.On(latitude, dayOfYear).Declination * 180 / Math.PI, 1.1);
    }

    [Fact]
    public void The_sun_does_not_rise_in_the_polar_night_nor_set_in_its_summer()
    {
        Assert.Equal(0, DayLength.Hours(80, 355));
        Assert.Equal(24, DayLength.Hours(80, 172));
    }
}
