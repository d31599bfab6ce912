using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Texts;

[Description("Which column of a CSV file holds what, by its header.")]
public sealed record ColumnsText : TextGroup
{
    [Description("The date.")]
    [Required]
    public Placed<string>? Date { get; init; }

    [Description("The lowest air temperature of the day.")]
    [Required]
    public Placed<string>? Minimum { get; init; }

    [Description("The highest air temperature of the day.")]
    [Required]
    public Placed<string>? Maximum { get; init; }

    [Description("The mean air temperature over the 24 hours.")]
    public Placed<string>? Mean { get; init; }

    [Description("Rain and melted snow.")]
    public Placed<string>? Precipitation { get; init; }

    [Description("Snow lying on the ground, in the unit of precipitation.")]
    public Placed<string>? SnowDepth { get; init; }

    [Description("Solar radiation on a level surface, in MJ/m².")]
    public Placed<string>? SolarRadiation { get; init; }

    [Description("Mean relative humidity, in %.")]
    public Placed<string>? Humidity { get; init; }

    [Description("Mean wind speed at 2 m, in m/s.")]
    public Placed<string>? Wind { get; init; }

    [Description("Measured daily mean soil temperature at 5 cm.")]
    public Placed<string>? Soil5Cm { get; init; }

    [Description("Measured daily mean soil temperature at 10 cm.")]
    public Placed<string>? Soil10Cm { get; init; }
}
