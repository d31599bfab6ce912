namespace GddWatch.Agronomy.Weather;

/// <summary>One site's day as a feed gives it, at the edge of the program. A value that the feed does not know is null.</summary>
public sealed record DailyRecord
{
    /// <summary>The day, in the site's own calendar.</summary>
    public required DateOnly Day { get; init; }

    /// <summary>Lowest air temperature [°C].</summary>
    public double? MinimumAirC { get; init; }

    /// <summary>Highest air temperature [°C].</summary>
    public double? MaximumAirC { get; init; }

    /// <summary>Mean air temperature over the 24 hours [°C].</summary>
    public double? MeanAirC { get; init; }

    /// <summary>Rain and melted snow [mm].</summary>
    public double? PrecipitationMm { get; init; }

    /// <summary>Snow on the ground [mm].</summary>
    public double? SnowDepthMm { get; init; }

    /// <summary>Solar radiation [MJ/m²].</summary>
    public double? SolarRadiationMJ { get; init; }

    /// <summary>Mean relative humidity [%].</summary>
    public double? RelativeHumidityPercent { get; init; }

    /// <summary>Mean wind speed at 2 m [m/s].</summary>
    public double? WindMPerS { get; init; }

    /// <summary>Measured soil temperature at 5 cm [°C].</summary>
    public double? Soil5CmC { get; init; }

    /// <summary>Measured soil temperature at 10 cm [°C].</summary>
    public double? Soil10CmC { get; init; }

    /// <summary>The value of a variable, or null.</summary>
    public double? this[WeatherVariable variable] => variable switch
    {
        WeatherVariable.MinimumAirC => MinimumAirC,
        WeatherVariable.MaximumAirC => MaximumAirC,
        WeatherVariable.MeanAirC => MeanAirC,
        WeatherVariable.PrecipitationMm => PrecipitationMm,
        WeatherVariable.SnowDepthMm => SnowDepthMm,
        WeatherVariable.SolarRadiationMJ => SolarRadiationMJ,
        WeatherVariable.RelativeHumidityPercent => RelativeHumidityPercent,
        WeatherVariable.WindMPerS => WindMPerS,
        WeatherVariable.Soil5CmC => Soil5CmC,
        WeatherVariable.Soil10CmC => Soil10CmC,
        _ => throw new ArgumentOutOfRangeException(nameof(variable), variable, "This variable has no place in a daily record."),
    };
}
