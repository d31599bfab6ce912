using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using GddWatch.Agronomy.Quantities;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Texts;

[Description("A guard by the date, written for the north.")]
public sealed record CalendarText : TextGroup
{
    [Description("The first day on which it is met.")]
    public Placed<AnnualDay>? NotBefore { get; init; }

    [Description("The last day on which it is met.")]
    public Placed<AnnualDay>? NotAfter { get; init; }
}
