using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Tests.Soil;
using GddWatch.Agronomy.Turf;
using GddWatch.Agronomy.Weather;
using Xunit;

namespace GddWatch.Agronomy.Tests.Turf;

/// <summary>Evapotranspiration and root zone against what weather services publish. The bounds stand a little outside what was measured on the files, which is written beside them.</summary>
public sealed class MeasuredEvapotranspirationTests
{
    // Measured: bias -0.13, mean absolute difference 0.40 mm a day, correlation 0.979 on 2,921 days with a mean of 3.66 mm.
    [Fact]
    public void With_sun_humidity_and_wind_it_agrees_with_what_a_network_on_irrigated_grass_publishes()
    {
        Agreement full = AtIrrigatedStation((day, sun) => ReferenceEvapotranspiration.Mm(
            day.MinimumC, day.MaximumC, sun, IrrigatedStation.ElevationM, day.SolarMJ, day.HumidityPercent, day.WindMPerS));
        Assert.True(full.Days > 2500);
        Assert.InRange(full.Bias, -0.25, 0.25);
        Assert.InRange(full.MeanAbsolute, 0, 0.5);
        Assert.InRange(full.Correlation, 0.97, 1);
    }

    // Measured mean absolute differences: full 0.40, without wind 0.62, Hargreaves 0.67, Penman-Monteith reduced to temperatures 0.79. The same order as in Mississippi (Fisher and Pringle 2013, SEEN in
    // summary: Hargreaves 0.68, reduced Penman-Monteith 0.92), and why temperatures alone go to Hargreaves.
    [Fact]
    public void The_less_is_known_the_further_off_it_is_and_with_temperatures_alone_Hargreaves_is_nearer_than_the_reduced_equation()
    {
        double full = AtIrrigatedStation((day, sun) => ReferenceEvapotranspiration.Mm(
            day.MinimumC, day.MaximumC, sun, IrrigatedStation.ElevationM, day.SolarMJ, day.HumidityPercent, day.WindMPerS)).MeanAbsolute;
        double withoutWind = AtIrrigatedStation((day, sun) => ReferenceEvapotranspiration.Mm(
            day.MinimumC, day.MaximumC, sun, IrrigatedStation.ElevationM, day.SolarMJ, day.HumidityPercent)).MeanAbsolute;
        double alone = AtIrrigatedStation((day, sun) => ReferenceEvapotranspiration.Mm(day.MinimumC, day.MaximumC, sun, IrrigatedStation.ElevationM)).MeanAbsolute;
        double reduced = AtIrrigatedStation((day, sun) => ReferenceEvapotranspiration.PenmanMonteithMm(day.MinimumC, day.MaximumC, sun, IrrigatedStation.ElevationM)).MeanAbsolute;
        Assert.True(full < withoutWind && withoutWind < alone && alone < reduced, $"{full:F2} {withoutWind:F2} {alone:F2} {reduced:F2}");
    }

    // Science reference 4: mean error +0.28, mean absolute error 0.68 mm a day in humid Mississippi (Fisher and Pringle 2013, SEEN in summary), against the equation with wind. Here the wind is not known
    // and stands at 2 m/s; measured means over the 40 humid stations: +0.38 and 0.61. (The reduced equation comes to
    // 0.55 here, but it shares the assumed wind with what it is held against, so that this is no contest between the two.)
    [Fact]
    public void At_the_humid_stations_Hargreaves_is_as_far_from_measured_sun_and_humidity_as_was_published()
    {
        Agreement[] stations = [.. MeasuredStation.All.Where(station => station.Humid).Select(AtStation)];
        Assert.True(stations.Length >= 30);
        Assert.InRange(stations.Average(station => station.Bias), 0.28 - 0.3, 0.28 + 0.3);
        Assert.InRange(stations.Average(station => station.MeanAbsolute), 0.68 - 0.2, 0.68 + 0.2);
        Assert.All(stations, station => Assert.InRange(station.Correlation, 0.8, 1));
    }

    // Measured: sun alone known bias 0.06, mean absolute difference 0.27 mm a day, correlation 0.952 on 16,591 days with a mean of 1.51 mm. The service's own equation is Penman-Monteith (MEMORY).
    [Fact]
    public void With_measured_sun_it_agrees_with_what_a_maritime_weather_service_publishes()
    {
        Agreement found = Agreement.Of(MaritimeStation.Days.Where(day => !double.IsNaN(day.SolarMJ)).Select(day => (
            ReferenceEvapotranspiration.Mm(
                day.MinimumC, day.MaximumC, ExtraterrestrialRadiation.MJPerM2(MaritimeStation.Latitude, day.Day.DayOfYear), MaritimeStation.ElevationM, day.SolarMJ, isCoastal: true),
            day.PublishedMm)));
        Assert.True(found.Days > 15000);
        Assert.InRange(found.Bias, -0.2, 0.2);
        Assert.InRange(found.MeanAbsolute, 0, 0.35);
        Assert.InRange(found.Correlation, 0.94, 1);
    }

    // The service reckons its deficit with a storage and a stress rule of its own, so that only rise and fall can agree. Measured, April to September: correlation 0.917 on 8,418 days.
    [Fact]
    public void The_water_missing_rises_and_falls_with_the_deficit_that_a_weather_service_publishes()
    {
        MaritimeStation[] days = MaritimeStation.Days;
        double[] reference = [.. days.Select(day => ReferenceEvapotranspiration.Mm(
            day.MinimumC, day.MaximumC, ExtraterrestrialRadiation.MJPerM2(MaritimeStation.Latitude, day.Day.DayOfYear), MaritimeStation.ElevationM, day.SolarMJ, double.NaN, day.WindMPerS, isCoastal: true))];
        double[] rain = [.. days.Select(day => day.RainMm)];
        double[] missing = RootZoneColumn.Mm(TurfType.CoolSeason, 80, reference, rain, new HashSet<int>());
        Assert.InRange(missing.Count(double.IsNaN), 1, 60);
        Agreement summer = Agreement.Of(days.Zip(missing)
            .Where(pair => pair.First.Day.Month is >= 4 and <= 9)
            .Select(pair => (pair.Second, Math.Max(0, pair.First.DeficitMm))));
        Assert.True(summer.Days > 7000);
        Assert.InRange(summer.Correlation, 0.9, 1);
    }

    private static Agreement AtIrrigatedStation(Func<IrrigatedStation, double, double> reckoned) => Agreement.Of(
        IrrigatedStation.Days.Select(day => (reckoned(day, ExtraterrestrialRadiation.MJPerM2(IrrigatedStation.Latitude, day.DayOfYear)), day.PublishedMm)));

    private static Agreement AtStation(MeasuredStation station)
    {
        DailySeries series = station.Series;
        var pairs = new List<(double Ours, double Theirs)>(series.Count);
        for (int i = 0; i < series.Count; i++)
        {
            double solar = series.Column(WeatherVariable.SolarRadiationMJ)[i];
            double humidity = series.Column(WeatherVariable.RelativeHumidityPercent)[i];
            if (double.IsNaN(solar) || double.IsNaN(humidity)) continue;
            double sun = ExtraterrestrialRadiation.MJPerM2(station.Latitude, series.DayAt(i).DayOfYear);
            // The height hardly matters to either form: 200 m stands for all.
            pairs.Add((
                Hargreaves.Mm(series.MinimumAirC[i], series.MaximumAirC[i], sun),
                ReferenceEvapotranspiration.PenmanMonteithMm(series.MinimumAirC[i], series.MaximumAirC[i], sun, 200, solar, humidity)));
        }

        return Agreement.Of(pairs);
    }
}
