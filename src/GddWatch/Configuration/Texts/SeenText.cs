using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using GddWatch.Configuration.Scalars;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Texts;

[Description("Something seen outdoors that says whether the window opened at the right time.")]
public sealed record SeenText : TextGroup
{
    [Description("What is seen, as in the journal and in files of observed dates, such as first-seedlings.")]
    [Required]
    public Placed<string>? What { get; init; }

    [Description("How long before it the window should open, such as 14 days; without it on the day itself.")]
    public Placed<DayCount>? OpensBefore { get; init; }
}
