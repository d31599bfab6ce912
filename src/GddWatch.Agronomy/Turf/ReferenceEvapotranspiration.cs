using GddWatch.Agronomy.Weather;

namespace GddWatch.Agronomy.Turf;

/// <summary>How much water well-watered short grass gives to the air, from whatever is known of a day.</summary>
public static class ReferenceEvapotranspiration
{
    /// <summary>
    /// Gives a day's ET0 [mm]. Where radiation, humidity or wind is known: Penman-Monteith, with the standard's own reductions for what is missing, which are radiation from the day's range of
    /// temperature, dew point at the lowest temperature, and a wind of 2 m/s. Where temperatures alone are known: Hargreaves, which was nearer to the full equation than the reduced one in a
    /// humid climate (mean absolute error 0.68 against 0.92 mm; Fisher and Pringle 2013, SEEN in summary).
    /// <para>Valid for days at any latitude. A missing temperature gives NaN; anything else that is missing (NaN) is reduced.</para>
    /// <para>Source: Allen, Pereira, Raes and Smith 1998, FAO Irrigation and Drainage Paper 56, chapters 3 and 4 (MEMORY; examples 18 and 20 SEEN through public test suites and CALC).</para>
    /// </summary>
    /// <param name="minimumC">Lowest air temperature [°C].</param>
    /// <param name="maximumC">Highest air temperature [°C].</param>
    /// <param name="aboveAirMJ">Radiation above the air Ra [MJ/m²].</param>
    /// <param name="elevationM">Height above the sea [m].</param>
    /// <param name="solarMJ">Solar radiation [MJ/m²], NaN where not known.</param>
    /// <param name="humidityPercent">Mean relative humidity [%], NaN where not known.</param>
    /// <param name="windMPerS">Wind at 2 m [m/s], NaN where not known.</param>
    /// <param name="isCoastal">Whether the sea tempers the air here, so that a day's range of temperature stands for more sun.</param>
    public static double Mm(
        double minimumC,
        double maximumC,
        double aboveAirMJ,
        double elevationM,
        double solarMJ = double.NaN,
        double humidityPercent = double.NaN,
        double windMPerS = double.NaN,
        bool isCoastal = false) => WayFor(solarMJ, humidityPercent, windMPerS) == EvapotranspirationWay.TemperaturesAlone
        ? Hargreaves.Mm(minimumC, maximumC, aboveAirMJ)
        : PenmanMonteithMm(minimumC, maximumC, aboveAirMJ, elevationM, solarMJ, humidityPercent, windMPerS, isCoastal);

    /// <summary>
    /// Gives by which way <see cref="Mm"/> reckons a day from what is known of it besides its temperatures.
    /// <para>Valid for any values; what is missing is NaN.</para>
    /// <para>Source: as <see cref="Mm"/>.</para>
    /// </summary>
    /// <param name="solarMJ">Solar radiation [MJ/m²], NaN where not known.</param>
    /// <param name="humidityPercent">Mean relative humidity [%], NaN where not known.</param>
    /// <param name="windMPerS">Wind at 2 m [m/s], NaN where not known.</param>
    public static EvapotranspirationWay WayFor(double solarMJ, double humidityPercent, double windMPerS)
    {
        int missing = (double.IsNaN(solarMJ) ? 1 : 0) + (double.IsNaN(humidityPercent) ? 1 : 0) + (double.IsNaN(windMPerS) ? 1 : 0);
        return missing switch
        {
            0 => EvapotranspirationWay.Full,
            3 => EvapotranspirationWay.TemperaturesAlone,
            _ => EvapotranspirationWay.Reduced,
        };
    }

    /// <summary>
    /// Gives Penman-Monteith with the standard's reductions for everything that is missing, temperatures alone included.
    /// <para>Valid as <see cref="Mm"/>; a missing temperature gives NaN.</para>
    /// <para>Source: Allen et al. 1998, FAO-56, chapter 3, "Calculation procedures with missing data" (MEMORY; example 20 SEEN through public test suites and CALC).</para>
    /// </summary>
    /// <inheritdoc cref="Mm"/>
    public static double PenmanMonteithMm(
        double minimumC,
        double maximumC,
        double aboveAirMJ,
        double elevationM,
        double solarMJ = double.NaN,
        double humidityPercent = double.NaN,
        double windMPerS = double.NaN,
        bool isCoastal = false)
    {
        double coefficient = isCoastal ? SolarRadiation.CoastCoefficient : SolarRadiation.InlandCoefficient;
        double clearSky = SolarRadiation.ClearSkyMJ(elevationM, aboveAirMJ);
        double solar = double.IsNaN(solarMJ) ? Math.Min(SolarRadiation.FromTemperaturesMJ(minimumC, maximumC, aboveAirMJ, coefficient), clearSky) : solarMJ;
        double vapour = double.IsNaN(humidityPercent) ? VapourPressure.SaturationKPa(minimumC) : VapourPressure.FromMeanHumidityKPa(minimumC, maximumC, humidityPercent);
        double wind = double.IsNaN(windMPerS) ? WindSpeed.UsualMPerS : windMPerS;
        double net = NetRadiation.MJ(solar, NetRadiation.LongwaveMJ(minimumC, maximumC, vapour, solar, clearSky));
        return PenmanMonteith.Mm(
            (minimumC + maximumC) / 2.0, net, 0, wind, VapourPressure.MeanSaturationKPa(minimumC, maximumC), vapour, AirPressure.PsychrometricKPaPerC(elevationM));
    }

    /// <summary>
    /// Gives ET0 of each day of a series [mm], each from what is known of that day alone.
    /// <para>Valid as <see cref="Mm"/>; NaN on a day without both temperatures.</para>
    /// <para>Source: as <see cref="Mm"/>.</para>
    /// </summary>
    /// <param name="series">The weather.</param>
    /// <param name="latitudeDegrees">Latitude [°], north positive.</param>
    /// <param name="elevationM">Height above the sea [m].</param>
    /// <param name="isCoastal">Whether the sea tempers the air here.</param>
    /// <exception cref="ArgumentOutOfRangeException">The latitude lies beyond the poles.</exception>
    public static double[] Column(DailySeries series, double latitudeDegrees, double elevationM, bool isCoastal = false)
    {
        ArgumentNullException.ThrowIfNull(series);
        Span<double> aboveAir = stackalloc double[366];
        for (int i = 0; i < aboveAir.Length; i++) aboveAir[i] = ExtraterrestrialRadiation.MJPerM2(latitudeDegrees, i + 1);
        ReadOnlySpan<double> minimum = series.MinimumAirC;
        ReadOnlySpan<double> maximum = series.MaximumAirC;
        ReadOnlySpan<double> solar = series.Column(WeatherVariable.SolarRadiationMJ);
        ReadOnlySpan<double> humidity = series.Column(WeatherVariable.RelativeHumidityPercent);
        ReadOnlySpan<double> wind = series.Column(WeatherVariable.WindMPerS);
        var column = new double[series.Count];
        for (int i = 0; i < column.Length; i++)
        {
            double sun = aboveAir[series.DayAt(i).DayOfYear - 1];
            column[i] = Mm(minimum[i], maximum[i], sun, elevationM, At(solar, i), At(humidity, i), At(wind, i), isCoastal);
        }

        return column;
    }

    private static double At(ReadOnlySpan<double> column, int index) => column.IsEmpty ? double.NaN : column[index];
}
