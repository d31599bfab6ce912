using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Texts;

[Description("Who runs the service.")]
public sealed record OperatorText : TextGroup
{
    [Description("The mail address.")]
    [Required]
    public Placed<string>? Address { get; init; }
}
