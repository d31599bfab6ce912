namespace GddWatch.Agronomy.Soil;

/// <summary>One day as the published models see it.</summary>
/// <param name="DayOfYear">Day of the year, from 1.</param>
/// <param name="Latitude">What the latitude says of the day of the year.</param>
/// <param name="MinimumC">Lowest air temperature [°C].</param>
/// <param name="MaximumC">Highest air temperature [°C].</param>
/// <param name="PrecipitationMm">Precipitation [mm]; 0 where it is not known.</param>
/// <param name="SnowMm">Snow on the ground at the day's end, by degree-days [mm of water].</param>
internal readonly record struct AirDay(
    int DayOfYear, LatitudeDay Latitude, double MinimumC, double MaximumC, double PrecipitationMm, double SnowMm)
{
    /// <summary>The middle of the extremes [°C].</summary>
    public double MeanC => (MinimumC + MaximumC) / 2.0;

    /// <summary>Solar radiation from the daily range, 0.16·√(Tx − Tn)·Ra (Hargreaves; FAO-56) [MJ/m²].</summary>
    public double SolarRadiationMJ => 0.16 * Math.Sqrt(MaximumC - MinimumC) * Latitude.RadiationMJ;
}
