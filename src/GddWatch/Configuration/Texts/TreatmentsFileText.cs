using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Texts;

[Description("The lawn year: what is done when, and what must not go together.")]
public sealed record TreatmentsFileText : TextGroup
{
    [Description("Sentences with a name each, which treatments refer to by it.")]
    public PlacedNames<Placed<string>>? Cautions { get; init; }

    [Description("The treatments.")]
    [Required]
    public PlacedList<TreatmentText>? Treatments { get; init; }

    [Description("What is often done too early.")]
    public PlacedList<NotYetText>? NotYet { get; init; }
}
