using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using GddWatch.Agronomy.Quantities;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Texts;

[Description("The region.")]
public sealed record RegionText : TextGroup
{
    [Description("The name that people read.")]
    [Required]
    public Placed<string>? Name { get; init; }

    [Description("The time zone of the day, such as America/Chicago.")]
    [Required]
    public Placed<string>? TimeZone { get; init; }

    [Description("The units that people read: us (°F, inches) or metric (°C, cm).")]
    [Required]
    public Placed<ReadersUnits>? Units { get; init; }

    [Description("A sentence for the foot of every mail and table.")]
    public Placed<string>? Remark { get; init; }
}
