using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Texts;

[Description("What is often done too early: named in the bulletin and in status, never in a mail of its own.")]
public sealed record NotYetText : TextGroup
{
    [Description("What must wait.")]
    [Required]
    public Placed<string>? Name { get; init; }

    [Description("The turf it is about, as a list.")]
    [Required]
    public PlacedList<Placed<TurfType>>? Turf { get; init; }

    [Description("The first day of the year on which it is named, written for the north.")]
    [Required]
    public Placed<AnnualDay>? From { get; init; }

    [Description("The last day of the year on which it is named.")]
    [Required]
    public Placed<AnnualDay>? Until { get; init; }

    [Description("Why it must wait, in a sentence.")]
    [Required]
    public Placed<string>? Reason { get; init; }

    [Description("The id of the treatment whose window is waited for; its usual date is told, and once it has opened nothing is.")]
    public Placed<string>? WaitFor { get; init; }
}
