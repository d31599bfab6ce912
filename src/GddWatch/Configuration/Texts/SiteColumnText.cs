using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Texts;

[Description("Which rows of a file that holds several sites are this one's.")]
public sealed record SiteColumnText : TextGroup
{
    [Description("The header of the column that names the station.")]
    [Required]
    public Placed<string>? Name { get; init; }

    [Description("What stands there in this site's rows.")]
    [Required]
    public Placed<string>? Value { get; init; }
}
