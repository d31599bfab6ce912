using GddWatch.Agronomy.Turf;

namespace GddWatch.Agronomy.Soil;

/// <summary>What the latitude alone says of a day of the year: the sun above the air, and the yearly wave of the air and of the deep
/// soil.</summary>
/// <param name="RadiationMJ">Radiation above the air [MJ/m²].</param>
/// <param name="AirWaveC">By how much the air of this day of the year usually departs from its yearly mean [°C].</param>
/// <param name="DeepWaveC">The same for the soil at about 1 m [°C].</param>
internal readonly record struct LatitudeDay(double RadiationMJ, double AirWaveC, double DeepWaveC)
{
    /// <summary>Days of a table: the longest year [days].</summary>
    public const int DaysOfTable = 366;

    private const double WavePerRadiation = 0.84;
    private const double WarmestDay = 203;
    private const double DeepWaveShare = 0.6;
    private const double DeepWaveDelayDays = 55;

    /// <summary>
    /// Fills a table with each day of the year at a latitude.
    /// <para>Air wave C(J) = A·cos(2π(J − 203)/365.25), A = 0.84·(Ra(172) − Ra(355))/2, so that it turns round by itself on the southern
    /// half of the earth; deep wave C3(J) = 0.6·A·cos(2π(J − 258)/365.25).</para>
    /// <para>Valid outside the polar circles. It only stands in for missing days and starts the deepest layer, so that its error
    /// fades.</para>
    /// <para>Fitted: 0.84 and day 203 are the mean of half range and phase over the 50 stations of
    /// <see cref="LayeredTurfSoilCoefficients"/>; the share and delay of the deep wave are set by hand.</para>
    /// </summary>
    /// <param name="latitudeDegrees">Latitude [°], north positive.</param>
    /// <param name="table">Receives 1 January at place 0; 366 places.</param>
    /// <exception cref="ArgumentOutOfRangeException">The latitude lies beyond the poles.</exception>
    public static void Fill(double latitudeDegrees, Span<LatitudeDay> table)
    {
        double summer = ExtraterrestrialRadiation.MJPerM2(latitudeDegrees, 172);
        double winter = ExtraterrestrialRadiation.MJPerM2(latitudeDegrees, 355);
        double wave = WavePerRadiation * (summer - winter) / 2.0;
        for (int i = 0; i < table.Length; i++)
        {
            double sinceWarmest = i + 1 - WarmestDay;
            table[i] = new LatitudeDay(
                ExtraterrestrialRadiation.MJPerM2(latitudeDegrees, i + 1),
                wave * Math.Cos(2.0 * Math.PI / 365.25 * sinceWarmest),
                DeepWaveShare * wave * Math.Cos(2.0 * Math.PI / 365.25 * (sinceWarmest - DeepWaveDelayDays)));
        }
    }
}
