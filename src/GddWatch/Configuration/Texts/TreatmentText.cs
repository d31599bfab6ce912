using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using GddWatch.Agronomy.Places;
using GddWatch.Configuration.Scalars;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Texts;

[Description("One lawn task that has a window.")]
public sealed record TreatmentText : TextGroup
{
    [Description("A short plain name, in lower-case letters, digits and hyphens.")]
    [Required]
    public Placed<string>? Id { get; init; }

    [Description("The name that people read.")]
    [Required]
    public Placed<string>? Name { get; init; }

    [Description("The turf it is for, as a list.")]
    [Required]
    public PlacedList<Placed<TurfType>>? Turf { get; init; }

    [Description("The part of the year in which its window is looked for, written for the north; half a year later in the south.")]
    [Required]
    public SeasonText? Season { get; init; }

    [Description("What opens the window.")]
    [Required]
    public ConditionText? Opens { get; init; }

    [Description("What makes an open window past its best.")]
    public ConditionText? Closing { get; init; }

    [Description("What closes the window.")]
    public ConditionText? Closed { get; init; }

    [Description("While this is so, an open window waits.")]
    public ConditionText? Paused { get; init; }

    [Description("The kind of work, as far as local law looks at it: feeding, watering, weed-control, insect-control, seeding, mowing or soil-work.")]
    public Placed<WorkKind>? Work { get; init; }

    [Description("After how many days it may be done again in the same season; without it, once is enough.")]
    public Placed<DayCount>? AgainAfter { get; init; }

    [Description("The treatments that it and they forbid each other.")]
    public PlacedList<ExclusionText>? Excludes { get; init; }

    [Description("Told only at sites that have had this problem, such as grubs.")]
    public Placed<string>? OnlyWithHistory { get; init; }

    [Description("Told only at sites where one of these grasses grows, such as bermudagrass.")]
    public PlacedList<Placed<string>>? OnlyWithGrass { get; init; }

    [Description("Whether it is told in the weekly bulletin and in status alone, never by a mail of its own.")]
    public Placed<bool>? BulletinOnly { get; init; }

    [Description("When a heads-up is sent before the window opens.")]
    public HeadsUpText? HeadsUp { get; init; }

    [Description("What past windows are compared with by backtest: the date that people go by, a rule of thumb, and what is seen outdoors.")]
    public CompareWithText? CompareWith { get; init; }

    [Description("What to do, a sentence each.")]
    public PlacedList<Placed<string>>? Do { get; init; }

    [Description("What is left to do once the window is past its best, a sentence each.")]
    public PlacedList<Placed<string>>? DoPastBest { get; init; }

    [Description("What not to do, a sentence each.")]
    public PlacedList<Placed<string>>? DoNot { get; init; }

    [Description("The names of the cautions that go with it.")]
    public PlacedList<Placed<string>>? Cautions { get; init; }

    [Description("What a reader should know of how well the thresholds are tested, a sentence each.")]
    public PlacedList<Placed<string>>? Untested { get; init; }
}
