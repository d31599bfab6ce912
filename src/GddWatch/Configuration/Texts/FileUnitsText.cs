using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using GddWatch.Configuration.Yaml;
using GddWatch.Feeds.Csv;

namespace GddWatch.Configuration.Texts;

[Description("The units of a CSV file.")]
public sealed record FileUnitsText : TextGroup
{
    [Description("The unit of its temperatures: °C or °F.")]
    [Required]
    public Placed<FileTemperatureUnit>? Temperature { get; init; }

    [Description("The unit of its rain and snow: mm, cm or in; needed where it has such a column.")]
    public Placed<FileLengthUnit>? Precipitation { get; init; }
}
