namespace GddWatch.Agronomy.Soil;

/// <summary>Snow on the ground from air temperature and precipitation.</summary>
internal static class SnowByDegreeDays
{
    /// <summary>Melting for each degree above 0 °C where a model has no value of its own [mm/°C].</summary>
    public const double UsualMeltMmPerC = 5.2;

    /// <summary>
    /// Gives the snow at the end of a day and the liquid water that reaches the soil: a share clip((2 − m)/4, 0, 1) of precipitation falls
    /// as snow, then k·max(0, m) melts at most.
    /// <para>Valid for lowlands; snow on the ground is not measured here, so that only its effect on soil temperature was checked.</para>
    /// <para>Source: the degree-day method of general hydrology (MEMORY); fitted: melt of 5.2 mm/°C, as told at
    /// <see cref="LayeredTurfSoilCoefficients"/>.</para>
    /// </summary>
    /// <param name="snowMm">Snow at the day's start [mm of water].</param>
    /// <param name="meanC">Mean air temperature m [°C].</param>
    /// <param name="precipitationMm">Precipitation [mm].</param>
    /// <param name="meltMmPerC">Melting k [mm/°C].</param>
    /// <returns>Snow at the day's end and water to the soil [mm]; NaN where an input is NaN.</returns>
    public static (double SnowMm, double WaterMm) Step(double snowMm, double meanC, double precipitationMm, double meltMmPerC)
    {
        double snowing = Math.Min(1.0, Math.Max(0.0, (2.0 - meanC) / 4.0));
        double snow = snowMm + precipitationMm * snowing;
        double melt = Math.Min(snow, meltMmPerC * Math.Max(meanC, 0.0));
        return (snow - melt, precipitationMm * (1.0 - snowing) + melt);
    }
}
