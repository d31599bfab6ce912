namespace GddWatch.Agronomy.Changes;

/// <summary>What a small chart shows: a site's soil temperature and heat of the last weeks against the range of earlier years, in the reader's units.</summary>
/// <param name="LastDay">The last day drawn.</param>
/// <param name="SoilUnit">The unit of the soil temperature, such as "°F".</param>
/// <param name="HeatUnit">The unit of the heat, such as "°F-days".</param>
/// <param name="Soil">The 5-day mean of the soil at 5 cm, one value a day.</param>
/// <param name="Heat">The heat sum of the air, base 50 °F (10 °C), simple average, since the turn of the site's year.</param>
/// <param name="Words">The chart in a sentence, for who cannot see it.</param>
public sealed record BulletinChart(DateOnly LastDay, string SoilUnit, string HeatUnit, ChartCurve Soil, ChartCurve Heat, string Words);
