using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using GddWatch.Agronomy.Changes;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Texts;

[Description("A person who is told.")]
public sealed record RecipientText : TextGroup
{
    [Description("The mail address.")]
    [Required]
    public Placed<string>? Address { get; init; }

    [Description("The name, for the salutation.")]
    public Placed<string>? Name { get; init; }

    [Description("all, or a list of site ids.")]
    [Required]
    public AllOrSome? Sites { get; init; }

    [Description("all, or a list of treatment ids.")]
    [Required]
    public AllOrSome? Treatments { get; init; }

    [Description("The kinds of notice that are wanted; opened, closing, closed and corrected where nothing is said.")]
    public PlacedList<Placed<NoticeKind>>? Notices { get; init; }

    [Description("Whether several notices of one pass come in one mail.")]
    public Placed<bool>? Together { get; init; }

    [Description("The time of day in which no mail is sent.")]
    public QuietText? Quiet { get; init; }

    [Description("The time zone of the quiet hours, such as America/Chicago; the region's where nothing is said.")]
    public Placed<string>? TimeZone { get; init; }

    [Description("Nothing is sent before that day.")]
    public Placed<DateOnly>? PausedUntil { get; init; }
}
