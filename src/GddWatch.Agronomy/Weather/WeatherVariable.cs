namespace GddWatch.Agronomy.Weather;

/// <summary>What a feed can know of a day. The unit is part of the name.</summary>
public enum WeatherVariable
{
    /// <summary>Lowest air temperature of the day at screen height [°C].</summary>
    MinimumAirC,

    /// <summary>Highest air temperature of the day at screen height [°C].</summary>
    MaximumAirC,

    /// <summary>Mean air temperature over the 24 hours [°C]; not the middle of the extremes.</summary>
    MeanAirC,

    /// <summary>Rain and melted snow [mm].</summary>
    PrecipitationMm,

    /// <summary>Snow lying on the ground [mm].</summary>
    SnowDepthMm,

    /// <summary>Solar radiation on a level surface [MJ/m²].</summary>
    SolarRadiationMJ,

    /// <summary>Mean relative humidity [%].</summary>
    RelativeHumidityPercent,

    /// <summary>Mean wind speed at 2 m [m/s].</summary>
    WindMPerS,

    /// <summary>Measured daily mean soil temperature at 5 cm [°C].</summary>
    Soil5CmC,

    /// <summary>Measured daily mean soil temperature at 10 cm [°C].</summary>
    Soil10CmC,
}
