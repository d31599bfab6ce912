using GddWatch.Agronomy.Changes;

namespace GddWatch.Tests.Notices.Composing;

/// <summary>Invented messages as the service would queue them.</summary>
internal static class SampleMessages
{
    public static DateTimeOffset QueuedAt { get; } = new(2026, 4, 13, 6, 30, 0, TimeSpan.FromHours(-5));

    public static Notice PreEmergent { get; } = new()
    {
        Key = new("north-common", "spring-pre-emergent", 2026, NoticeKind.Opened),
        Day = new(2026, 4, 13),
        Since = new(2026, 4, 12),
        SiteName = "North Common",
        TreatmentName = "Spring pre-emergent",
        Headline = "Spring pre-emergent is open at North Common since Sunday 12 April.",
        Reason = "The 5-day mean of the estimated soil temperature at 2 inches reached 50.4 °F on Sunday 12 April 2026 and has stayed at or above 50 °F.",
        Figures =
        [
            new("Soil temperature at 2 inches, estimated, mean of 5 days", "50.4 °F ± 2.3 °F", "50 °F or more"),
            new("Heat sum since 1 January, base 50 °F, simple average", "64 °F-days", ""),
            new("Days in a row", "3 days", "3 days"),
        ],
        ExpectedEnd = "Around Saturday 2 May 2026, when the soil usually passes 60 °F here (12 earlier seasons: 24 April to 11 May).",
        Do = ["Put the pre-emergent down before the soil passes 55 °F; crabgrass sprouts soon after.", "Water it in within the time that the label gives."],
        DoNot = ["Do not spread on frozen or soaked ground, or before heavy rain.", "Do not treat where you mean to sow this spring."],
        Choices =
        [
            "A pre-emergent also stops grass seed: for each area choose either the pre-emergent or seeding.",
            "No seeding is recorded here. If some was done, do not treat that area before the label allows.",
        ],
        Cautions = ["Sweep granules off paving back onto the lawn.", "Keep children and pets off for as long as the label says.", "Keep the label's distance from ditches, ponds and wells."],
        DataRemarks = ["1 of the last 5 days was filled from a neighbouring station (Thursday 9 April 2026)."],
    };

    /// <summary>The chart of a spring, with noise so that a picture of it is as large as they get.</summary>
    public static NoticeChart Chart { get; } = new(
        new(2026, 2, 2),
        new(2026, 4, 13),
        [new("Soil at 2 inches, 5-day mean [°F]", [50], Noisy(30, 0.3)), new("Growth potential, 14-day mean [%]", [60, 80], Noisy(10, 0.8))],
        "5-day mean soil temperature at 2 inches (estimated): 50.4 °F on Sunday 12 April 2026; looked for is at or above 50 °F; usual at this date are 43 to 52 °F in eight of ten earlier years.");

    public static CalendarEntry Entry { get; } = new(2, new(2026, 4, 12), new(2026, 5, 2), "The end is expected, not known: it usually closes about Saturday 2 May 2026.", IsWithdrawn: false);

    /// <summary>With all that goes beside the words: a chart and a calendar entry.</summary>
    public static Message WithPictureAndCalendar => One with { MessageId = "91c7@notices.example.org", Notices = [PreEmergent with { Chart = Chart, Entry = Entry }] };

    public static Notice Overseeding { get; } = new()
    {
        Key = new("mill-green", "overseeding", 2026, NoticeKind.Opened),
        Day = new(2026, 8, 24),
        Since = new(2026, 8, 20),
        FoundSo = true,
        SiteName = "Mill Green",
        TreatmentName = "Overseeding",
        Headline = "Overseeding is open at Mill Green since Thursday 20 August",
        Reason = "The soil at 2 inches fell below 75 °F, and 51 days are left before the usual first freeze.",
        Figures = [new("Soil temperature at 2 inches, estimated", "73.1 °F ± 2.3 °F", "75 °F or less"), new("Days before the usual first freeze", "51 days", "45 days or more")],
        ExpectedEnd = "Cannot be said yet: fewer than ten earlier seasons are known here.",
        Do = ["Sow as early in the window as you can."],
        DoNot = ["Do not sow into dry ground without a way to water."],
        Choices = ["No pre-emergent is recorded here; if one was applied, do not seed before its label allows."],
        Cautions = ["Watering rules where you live come first."],
    };

    public static Notice GrubsClosing { get; } = new()
    {
        Key = new("south-field", "grub-preventive", 2026, NoticeKind.Closing),
        Day = new(2026, 8, 24),
        Since = new(2026, 8, 22),
        SiteName = "South Field",
        TreatmentName = "Grub preventive",
        Headline = "Grub preventive at South Field is past its best since Saturday 22 August",
        Reason = "The heat sum has passed 1,250 °F-days.",
        Figures = [new("Heat sum since 1 March, base 50 °F", "1,262 °F-days", "1,250 °F-days")],
        Do = [],
        DoNot = [],
        Choices = [],
        Cautions = ["Mow flowering clover off first: bees visit it."],
    };

    public static Message One { get; } = new()
    {
        MessageId = "5f0c1e9a7b3d4c2f@notices.example.org",
        Address = "adviser@example.org",
        AddresseeName = "Ada Väinölä",
        Region = "Alder Reach",
        Remark = "Alder Reach, its sites and its weather are invented for demonstration.",
        OperatorAddress = "operator@example.org",
        Day = new(2026, 4, 13),
        Notices = [PreEmergent],
    };

    public static Message Seeding { get; } = One with { MessageId = "5eed@notices.example.org", Day = new(2026, 8, 24), Notices = [Overseeding] };

    public static Message Together { get; } = Seeding with { MessageId = "a11ce0@notices.example.org", Notices = [Overseeding, GrubsClosing] };

    public static Message ForOperator { get; } = One with
    {
        MessageId = "0be4a7@notices.example.org",
        Address = "operator@example.org",
        AddresseeName = "",
        Notices = [],
        OperatorWords =
        [
            "No new weather for Mill Green since Friday 10 April 2026: its windows are judged from older days. Check the file data-samples/mill-green.csv.",
            "The mail to adviser@example.org was refused for good: 550 5.1.1 No such user. Correct the address in region.yaml.",
        ],
    };

    private static ChartCurve Noisy(double from, double rise)
    {
        double At(int day) => from + (rise * day) + (3 * Math.Sin(day * 1.7)) + (2 * Math.Sin(day * 0.61));
        return new(
            [.. Enumerable.Range(0, 92).Select(day => day <= 70 ? At(day) : (double?)null)],
            [.. Enumerable.Range(0, 92).Select(day => At(day * 3) - 6 - (2 * rise * day))],
            [.. Enumerable.Range(0, 92).Select(day => At(day * 5) + 6 - (4 * rise * day))]);
    }
}
