using GddWatch.Agronomy.Soil;
using Xunit;

namespace GddWatch.Agronomy.Tests.Soil;

/// <summary>
/// The day's step against a separate implementation of the same model in another language, on a made-up year (CALC): mean 11 + 13 sin(2π(d
/// − 105)/365), extremes 6 °C to either side, 10 mm of rain every fifth day, latitude 40, J = (d − 1) mod 365 + 1.
/// </summary>
public sealed class TurfSoilLayersTests
{
    [Theory]
    [InlineData("rain", 1, -0.136274, -0.105750, -0.058040, -0.157185, 0.000000, 0.695670, 2.357657)]
    [InlineData("rain", 2, -0.260265, -0.201727, -0.110231, -0.300367, 0.000000, 0.691362, 2.241632)]
    [InlineData("rain", 10, -1.529279, -1.223868, -0.746505, -1.738508, 19.564329, 0.661046, 1.761154)]
    [InlineData("rain", 31, -0.978401, -0.686117, -0.229274, -1.178636, 57.498066, 0.587283, 1.405334)]
    [InlineData("rain", 60, -0.114035, 0.067626, 0.351565, -0.238486, 14.547128, 0.987128, 1.253644)]
    [InlineData("rain", 100, 9.518562, 9.220899, 8.755648, 9.722482, 0.000000, 0.912912, 1.493244)]
    [InlineData("rain", 150, 20.267718, 19.588801, 18.527644, 20.732825, 0.000000, 0.561832, 1.743677)]
    [InlineData("rain", 200, 25.119814, 24.452773, 23.410180, 25.576784, 0.000000, 0.412486, 1.775964)]
    [InlineData("rain", 250, 20.540783, 20.432456, 20.263141, 20.614994, 0.000000, 0.471601, 1.500137)]
    [InlineData("rain", 300, 10.171867, 10.568958, 11.189617, 9.899831, 0.000000, 0.726284, 1.228935)]
    [InlineData("rain", 365, 0.686337, 1.076962, 1.687515, 0.418730, 34.752579, 0.946979, 1.197009)]
    [InlineData("rain", 400, 1.346886, 1.607919, 2.015917, 1.168060, 100.100355, 0.780251, 1.179621)]
    [InlineData("rain", 500, 17.605052, 17.067676, 16.227750, 17.973193, 0.000000, 0.659587, 1.681755)]
    [InlineData("rain", 800, 3.535790, 3.534455, 3.532368, 3.536705, 0.000000, 0.984547, 1.226995)]
    [InlineData("rain unknown", 1, -0.194091, -0.154855, -0.093528, -0.220970, 3.073448, 0.697889, 2.355235)]
    [InlineData("rain unknown", 10, -1.440731, -1.153252, -0.703917, -1.637676, 30.187463, 0.667036, 1.751746)]
    [InlineData("rain unknown", 31, -0.621118, -0.359496, 0.049421, -0.800347, 89.310767, 0.596910, 1.379456)]
    [InlineData("rain unknown", 100, 9.638172, 9.353104, 8.907538, 9.833464, 0.000000, 0.974000, 1.465553)]
    [InlineData("rain unknown", 200, 24.899577, 24.338794, 23.462282, 25.283754, 0.000000, 0.529180, 1.687305)]
    [InlineData("rain unknown", 365, 1.116911, 1.479715, 2.046782, 0.868365, 41.552172, 0.971394, 1.130140)]
    [InlineData("rain unknown", 800, 3.720112, 3.739684, 3.770276, 3.706703, 0.000000, 0.984547, 1.180105)]
    [InlineData("days missing", 100, 9.127737, 8.861669, 8.445801, 9.310013, 0.000000, 0.916241, 2.432287)]
    [InlineData("days missing", 150, 20.257343, 19.577522, 18.514954, 20.723068, 0.000000, 0.563070, 1.743179)]
    [InlineData("days missing", 800, 3.535781, 3.534428, 3.532312, 3.536709, 0.000000, 0.984547, 1.226957)]
    [InlineData("south", 1, 0.236461, 0.189096, 0.115065, 0.268909, 0.000000, 0.686278, 2.750778)]
    [InlineData("south", 31, -4.739113, -4.825252, -4.959889, -4.680102, 57.498066, 0.406875, 1.440801)]
    [InlineData("south", 100, 4.856103, 4.188781, 3.145747, 5.313266, 0.000000, 0.964988, 1.237484)]
    [InlineData("south", 200, 18.787678, 18.329843, 17.614242, 19.101327, 0.000000, 0.983507, 1.162856)]
    [InlineData("south", 365, 1.108850, 1.630877, 2.446813, 0.751225, 34.752579, 0.518790, 1.160797)]
    [InlineData("south", 800, 4.848630, 4.840619, 4.828099, 4.854118, 0.000000, 0.976739, 1.397881)]
    public void A_made_up_year_goes_as_in_the_reference_implementation(
        string weather, int day, double at5Cm, double at10Cm, double at20Cm, double at2Cm, double snowMm, double wetness, double deviation)
    {
        double rainMm(int d) => weather == "rain unknown" ? double.NaN : d % 5 == 0 ? 10 : 0;
        bool missing(int d) => weather == "days missing" && d is >= 95 and <= 105;
        TurfSoilLayers layers = After(day, weather == "south" ? -40 : 40, 11, 13, rainMm, missing);
        Assert.Equal(at5Cm, layers.At(TurfSoilLayers.ShareOfMiddle(5)), 1e-5);
        Assert.Equal(at10Cm, layers.At(TurfSoilLayers.ShareOfMiddle(10)), 1e-5);
        Assert.Equal(at20Cm, layers.At(TurfSoilLayers.ShareOfMiddle(20)), 1e-5);
        Assert.Equal(at2Cm, layers.At(TurfSoilLayers.ShareOfMiddle(2)), 1e-5);
        Assert.Equal(snowMm, layers.SnowWaterMm, 1e-5);
        Assert.Equal(wetness, layers.Wetness, 1e-5);

        // The reference gives the deviation with known precipitation; unknown precipitation widens it only where the range is above 13 °C.
        Assert.Equal(deviation, layers.DeviationC, 1e-5);
    }

    [Theory]
    [InlineData(10, -3.426811, -2.967670, 16.000000, 0.688611, 1.760348)]
    [InlineData(40, -4.641774, -4.523309, 80.000000, 0.644979, 1.316851)]
    [InlineData(70, -4.400427, -4.351267, 136.000000, 0.550858, 1.190766)]
    [InlineData(90, -3.910447, -3.896997, 172.549074, 0.470446, 1.152873)]
    [InlineData(100, -3.295124, -3.331059, 103.892347, 0.982491, 1.141243)]
    [InlineData(110, 0.805706, 0.431104, 0.000000, 0.938245, 1.461090)]
    [InlineData(130, 7.490442, 6.626493, 0.000000, 0.815426, 1.582919)]
    [InlineData(199, 20.216655, 19.428588, 0.000000, 0.413451, 1.700089)]
    public void A_cold_winter_goes_as_in_the_reference_implementation(
        int day, double at5Cm, double at10Cm, double snowMm, double wetness, double deviation)
    {
        // Latitude 47, mean 4, amplitude 16 °C, 8 mm every fourth day: snow until day 105, and soil that waits at 0 °C for it to go.
        TurfSoilLayers layers = After(day, 47, 4, 16, d => d % 4 == 0 ? 8 : 0, _ => false);
        Assert.Equal(at5Cm, layers.ShallowC, 1e-5);
        Assert.Equal(at10Cm, layers.At(TurfSoilLayers.ShareOfMiddle(10)), 1e-5);
        Assert.Equal(snowMm, layers.SnowWaterMm, 1e-5);
        Assert.Equal(wetness, layers.Wetness, 1e-5);
        Assert.Equal(deviation, layers.DeviationC, 1e-5);
    }

    private static TurfSoilLayers After(int days, double latitude, double mean, double amplitude, Func<int, double> rainMm, Func<int, bool> missing)
    {
        var year = new LatitudeDay[LatitudeDay.DaysOfTable];
        LatitudeDay.Fill(latitude, year);
        var layers = new TurfSoilLayers(new LayeredTurfSoilCoefficients());
        for (int d = 1; d <= days; d++)
        {
            double middle = missing(d) ? double.NaN : mean + amplitude * Math.Sin(2 * Math.PI * (d - 105) / 365);
            layers.Step(year[(d - 1) % 365], middle - 6, middle + 6, rainMm(d));
        }

        return layers;
    }
}
