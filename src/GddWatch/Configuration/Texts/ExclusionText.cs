using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Texts;

[Description("A treatment that this one and it forbid each other.")]
public sealed record ExclusionText : TextGroup
{
    [Description("The id of the other treatment.")]
    [Required]
    public Placed<string>? Treatment { get; init; }

    [Description("The choice between the two, in a sentence.")]
    [Required]
    public Placed<string>? Choice { get; init; }

    [Description("What is not known where nothing is recorded, and what follows, in a sentence.")]
    [Required]
    public Placed<string>? NotRecorded { get; init; }

    [Description("How long this treatment is held once the other one is recorded.")]
    [Required]
    public HoldText? Held { get; init; }
}
