using GddWatch.Agronomy.Weather;

namespace GddWatch.Feeds.Reading;

/// <summary>What has been measured on earth at all. A value outside is a mistake of the instrument or of the file, not weather.</summary>
internal readonly record struct PossibleValues(double Lowest, double Highest, string Unit, string What)
{
    /// <summary>
    /// Air temperature: the bounds of the quality control of GHCN-Daily (Durre et al., 2010, Comprehensive automated quality assurance of daily surface
    /// observations, J. Appl. Meteor. Climatol. 49, MEMORY). Precipitation: 1825 mm in a day, Réunion 1966 (MEMORY). Snow: 11.82 m, Mount Ibuki 1927 (MEMORY).
    /// Radiation: no more than arrives above the air in a day, 48 MJ/m² (MEMORY). Wind: 48 m/s mean of a day, Port Martin 1951 (MEMORY). Soil: wider than the
    /// −45 to 65 °C found at 5 cm (MEMORY).
    /// </summary>
    public static PossibleValues Of(WeatherVariable variable) => variable switch
    {
        WeatherVariable.MinimumAirC or WeatherVariable.MaximumAirC or WeatherVariable.MeanAirC => new(-89.4, 57.7, "°C", "an air temperature"),
        WeatherVariable.PrecipitationMm => new(0, 1900, "mm", "a day's precipitation"),
        WeatherVariable.SnowDepthMm => new(0, 12_000, "mm", "a depth of snow"),
        WeatherVariable.SolarRadiationMJ => new(0, 48, "MJ/m²", "a day's solar radiation"),
        WeatherVariable.RelativeHumidityPercent => new(0, 100, "%", "a relative humidity"),
        WeatherVariable.WindMPerS => new(0, 50, "m/s", "a day's mean wind speed"),
        WeatherVariable.Soil5CmC or WeatherVariable.Soil10CmC => new(-60, 75, "°C", "a soil temperature"),
        _ => throw new ArgumentOutOfRangeException(nameof(variable), variable, "This variable has no known range."),
    };

    public bool Contains(double value) => value >= Lowest && value <= Highest;
}
