using Xunit;

namespace GddWatch.Tests.Configuration;

/// <summary>Every rule of treatments.yaml, each broken once: where the fault points, what was found, what would be accepted.</summary>
public sealed class SpoiltTreatmentsTests
{
    [Theory]
    [InlineData("rises-above: 50 °F", "rises-above: ¦50", "50", "A temperature needs its unit", "\"50 °F\" or \"10 °C\"")]
    [InlineData("rises-above: 50 °F", "rises-above: ¦500 °F", "500 °F", "No lawn knows", "-50 °C to 60 °C")]
    [InlineData("rises-above: 50 °F", "rises-above: ¦50 K", "50 K", "not a temperature", "\"50 °F\" or \"10 °C\"")]
    [InlineData("depth: 5 cm\n            mean-over: 5 days", "depth: ¦5\n            mean-over: 5 days", "5", "A depth needs its unit", "\"5 cm\" or \"2 in\"")]
    [InlineData("depth: 5 cm\n            mean-over: 5 days", "depth: ¦-5 cm\n            mean-over: 5 days", "-5 cm", "not looked at in this depth", "above 0 cm")]
    [InlineData("depth: 5 cm\n            mean-over: 5 days", "depth: 5 cm\n            mean-over: ¦5", "5", "A number of days needs its unit", "\"5 days\"")]
    [InlineData("depth: 5 cm\n            mean-over: 5 days", "depth: 5 cm\n            mean-over: ¦0 days", "0 days", "does not fit into a year", "1 day to 366 days")]
    [InlineData("held: 3 of 5 days", "held: ¦3 of 5", "3 of 5", "not a holding time", "\"3 of 5 days\"")]
    [InlineData("held: 3 of 5 days", "held: ¦6 of 5 days", "6 of 5 days", "can never be", "at most 5 of 5 days")]
    [InlineData("reaches: 78 °C-days", "reaches: ¦78 °C", "78 °C", "not a heat sum", "\"350 °F-days\" or \"78 °C-days\"")]
    [InlineData("reaches: 78 °C-days", "reaches: ¦78", "78", "A heat sum needs its unit", "°C-days")]
    [InlineData("reaches: 78 °C-days", "reaches: ¦0 °C-days", "0 °C-days", "No year brings", "above 0 °C-days")]
    [InlineData("chance: 50 %", "chance: ¦0.5", "0.5", "A chance needs its unit", "\"50 %\"")]
    [InlineData("chance: 50 %", "chance: ¦100 %", "100 %", "between never and always", "below 100 %")]
    public void The_quantities(string good, string marked, string? found, string problem, string accepted) =>
        Spoilt.Holds("treatments.yaml", good, marked, found, problem, accepted);

    [Theory]
    [InlineData("{ reaches: 78 °C-days, base: 12 °C, method: simple average,", "¦{ reaches: 78 °C-days, base: 12 °C,", null, "\"method\" is missing", "a threshold means nothing without its method")]
    [InlineData("method: single sine", "method: ¦double sign", "double sign", "not a word that is known here", "\"double sine\" is the nearest")]
    [InlineData("upper: 86 °F", "upper: ¦50 °F", "50 °F", "not above the base of 50 °F", "above the base")]
    [InlineData("upper: 86 °F, cutoff: horizontal", "upper: ¦86 °F", "86 °F", "what happens above the upper threshold", "horizontal")]
    [InlineData("upper: 86 °F, cutoff: horizontal", "cutoff: ¦horizontal", "horizontal", "no upper threshold", "upper: 86 °F")]
    [InlineData("method: simple average, from: 01-01, soil", "method: ¦single sine, from: 01-01, soil", "single sine", "knows no extremes", "simple average")]
    [InlineData("falls-below: 75 F", "falls-below: ¦75 F, rises-above: 60 F", "75 F", "both rises-above and falls-below", "one of the two")]
    [InlineData("{ depth: 2 in, mean-over: 5 days, falls-below: 75 F,", "¦{ depth: 2 in, mean-over: 5 days,", null, "has no threshold", "rises-above or falls-below")]
    [InlineData("usual: 55 °F", "usual: ¦45 °F", "45 °F", "lies below the threshold", "past it")]
    [InlineData("calendar: { not-before: 01-05 }", "calendar: ¦{}", null, "has no date", "not-before: 05-01")]
    [InlineData("days-before-first-freeze: { at", "¦days-before-first-frost: { at", "days-before-first-frost", "not known here", "\"days-before-first-freeze\" is the nearest")]
    [InlineData("closing:\n      days-before-first-freeze: { at-most: 45 days, chance: 50 %, fallback: 10-15 }", "closing: ¦{}", null, "No condition stands here", "soil-temperature")]
    [InlineData("closing:\n      days-before", "closing:\n      ¦calendar: { not-before: 10-01 }\n      days-before", "calendar, days-before-first-freeze", "stand side by side", "under \"all:\" or \"any:\"")]
    public void The_conditions(string good, string marked, string? found, string problem, string accepted) =>
        Spoilt.Holds("treatments.yaml", good, marked, found, problem, accepted);

    [Theory]
    [InlineData("air-temperature: { of: maximum, above: 60 °F, below: ¦50 °F }", "50 °F", "not above the lower one of 60 °F", "above the lower limit")]
    [InlineData("air-temperature: ¦{ of: maximum }", null, "has no limit", "above, below or both")]
    [InlineData("air-temperature: { of: ¦highest, below: 85 °F }", "highest", "not a word that is known", "minimum, maximum, mean")]
    [InlineData("air-temperature: { of: maximum, below: 85 °F, held: ¦2 days, next: 2 days }", "2 days", "nothing can be held", "next without held")]
    [InlineData("growth-potential: { turf: cool-season, mean-over: 14 days, at-least: ¦150 % }", "150 %", "cannot be above 100 %", "0 % to 100 %")]
    [InlineData("growth-potential: { turf: cool-season, mean-over: 14 days, at-least: 50 %, lets-go-at: ¦60 % }", "60 %", "let go before it is met", "below it")]
    [InlineData("growth-potential: { turf: cool-season, mean-over: 14 days, at-least: 50 %, fallback-peak: ¦80 % }", "80 %", "does nothing here", "of-usual-peak")]
    [InlineData("growth-potential: { turf: cool-season, mean-over: 14 days, at-least: 50 %, at-most: ¦80 % }", "80 %", "both a lower and an upper", "one of the two")]
    [InlineData("rain: { in-last: 2 days, at-least: ¦10 }", "10", "needs its unit", "10 mm")]
    [InlineData("rain: { in-last: 2 days, in-next: ¦2 days, at-least: 10 mm }", "2 days", "both past and to come", "one of the two")]
    [InlineData("rain: { in-last: 2 days, at-least: 10 mm, at-most: ¦5 mm }", "5 mm", "not above the lower one of 10 mm", "more rain")]
    [InlineData("root-zone-depletion: ¦{ turf: cool-season }", null, "has no limit", "at-least or at-most")]
    [InlineData("since-treatment: { treatment: ¦barier, at-least: 42 days }", "barier", "no treatment \"barier\"", "\"barrier\" is the nearest")]
    [InlineData("since-treatment: { treatment: barrier, at-least: 42 days, at-most: ¦30 days }", "30 days", "not above the lower one of 42 days", "more days")]
    [InlineData("since-treatment: { treatment: barrier, heat: ¦200 °C-days }", "200 °C-days", "no base or no method", "base and method")]
    [InlineData("since-treatment: { treatment: barrier, at-least: ¦300 days }", "300 days", "older than 200 days counts no more", "within: 300 days")]
    [InlineData("air-temperature: { of: maximum, mean-over: ¦3 days, below: 85 °F, next: 2 days }", "3 days", "day by day", "next without mean-over")]
    [InlineData("air-temperature: { of: maximum, below: 85 °F, lets-go-by: ¦2 °F, next: 2 days }", "2 °F", "nothing can be kept", "next without lets-go-by")]
    [InlineData("days-before-growth-falls: { turf: cool-season, under: ¦150 %, at-least: 28 days }", "150 %", "nearly always under", "below 100 %")]
    [InlineData("days-before-growth-falls: { turf: cool-season, under: ¦0 %, at-least: 28 days }", "0 %", "under nothing", "above 0 %")]
    [InlineData("days-before-growth-falls: ¦{ turf: cool-season, under: 50 % }", null, "how many days must be left", "at-least: 28 days")]
    [InlineData("days-before-growth-falls: { turf: cool-season, under: 50 %, at-least: 28 days, at-most: ¦14 days }", "14 days", "not above the lower one of 28 days", "more days")]
    [InlineData("days-after-last-freeze: ¦{ chance: 50 % }", null, "\"at-least\" is missing", "so many days after it")]
    [InlineData("days-after-last-freeze: { at-least: 14 days, chance: ¦100 % }", "100 %", "between never and always", "below 100 %")]
    [InlineData("root-zone-depletion: { turf: cool-season, at-least: ¦15 }", "15", "needs its unit", "15 mm")]
    [InlineData("root-zone-depletion: { turf: cool-season, at-least: ¦400 % }", "400 %", "too large", "0 % to 300 %")]
    [InlineData("root-zone-depletion: { turf: cool-season, at-most: ¦3000 mm }", "3000 mm", "so much water", "2000 mm")]
    [InlineData("since-treatment: ¦{ treatment: barrier }", null, "how long ago", "at-least: 42 days")]
    [InlineData("soil-temperature: { depth: 5 cm, mean-over: 5 days, rises-above: 50 °F, held: 3 days, lets-go-at: ¦52 °F }", "52 °F", "let go before it is met", "below it")]
    [InlineData("¦growth-potential: { turf: warm-season, mean-over: 14 days, at-least: 50 % }", null, "so its season never comes", "warm-season among its turf")]
    [InlineData("all: ¦[ { soil-temperature: { depth: 5 cm, mean-over: 5 days, rises-above: 60 °F, held: 3 days } }, { soil-temperature: { depth: 5 cm, mean-over: 5 days, falls-below: 50 °F, held: 3 days } } ]", null, "can never be met", "limits that leave something")]
    public void The_conditions_on_air_growth_water_and_records(string marked, string? found, string problem, string accepted) =>
        Spoilt.Holds(
            "treatments.yaml", "closing:\n      days-before-first-freeze: { at-most: 45 days, chance: 50 %, fallback: 10-15 }", $"closing:\n      {marked}", found, problem, accepted);

    [Fact]
    public void What_must_be_recorded_first_may_not_wait_for_what_waits_for_it()
    {
        string circle = ConfigurationFolder.Treatments
            .Replace("opens:\n      soil-temperature: { depth: 2 in, mean-over: 5 days, falls-below: 75 F, held: 2 days }", "opens:\n      ¦since-treatment: { treatment: seeding, at-least: 5 days }");
        Spoilt.Holds("treatments.yaml", ConfigurationFolder.Treatments, circle, null, "seeding waits for seeding", "without a circle");
    }

    [Theory]
    [InlineData("opens:\n      soil-temperature: { depth: 2 in, mean-over: 5 days, falls-below: 75 F, held: 2 days }", "opens:\n      ¦calendar: { not-before: 09-01 }", "calendar", "The date alone would open this window", "the date beside it as a guard")]
    [InlineData("opens:\n      soil-temperature: { depth: 2 in, mean-over: 5 days, falls-below: 75 F, held: 2 days }", "opens:\n      ¦any:\n        - calendar: { not-before: 09-01 }\n        - soil-temperature: { depth: 2 in, mean-over: 5 days, falls-below: 75 F, held: 2 days }", "calendar", "The date alone would open this window", "\"all:\"")]
    [InlineData("all:\n        - soil-temperature:\n            depth: 5 cm\n            mean-over: 5 days\n            rises-above: 50 °F\n            held: 3 of 5 days", "¦all:\n        - calendar: { not-before: 08-01 }\n        - soil-temperature:\n            depth: 5 cm\n            mean-over: 5 days\n            rises-above: 50 °F\n            held: 3 of 5 days", null, "leaves no day of the season from 01-01 until 07-31", "within the season")]
    [InlineData("closing:\n      days-before-first-freeze: { at-most: 45 days, chance: 50 %, fallback: 10-15 }", "closing:\n      ¦all:\n        - calendar: { not-before: 11-20, not-after: 11-10 }\n        - days-before-first-freeze: { at-most: 45 days, chance: 50 %, fallback: 10-15 }", null, "this window is never past its best", "a guard that leaves days within the season")]
    [InlineData("season: { from: 08-10, until: 12-15 }", "season: { from: 08-10, until: ¦08-10 }", "08-10", "a single day", "a last day after the first")]
    [InlineData("season: { from: 08-10, until: 12-15 }", "season: { from: 08-10, until: ¦13-01 }", "13-01", "No year has such a day", "month-day")]
    [InlineData("id: seeding\n    name: Seeding\n    turf: [cool-season]\n    season: { from: 08-10, until: 12-15 }\n    opens:\n      soil-temperature: { depth: 2 in, mean-over: 5 days, falls-below: 75 F, held: 2 days }", "¦id: seeding\n    name: Seeding\n    turf: [cool-season]\n    season: { from: 08-10, until: 12-15 }", null, "\"opens\" is missing", "What opens the window")]
    public void The_window(string good, string marked, string? found, string problem, string accepted) =>
        Spoilt.Holds("treatments.yaml", good, marked, found, problem, accepted);

    [Theory]
    [InlineData("{ treatment: seeding, choice: One of the two., not-recorded: Nothing is recorded., held: { longest: 120 days, mowings: 3 } }\n    cautions: [label]", "{ treatment: seeding, choice: One of the two., not-recorded: Nothing is recorded., held: { longest: 120 days, mowings: 3 } }\n    cautions: [¦lable]", "lable", "no caution \"lable\"", "\"label\" is the nearest")]
    [InlineData("treatment: barrier, choice", "treatment: barrier, choice: One., not-recorded: No., held: { longest: 1 days } }\n      - { treatment: ¦weeding, choice", "weeding", "no treatment \"weeding\"", "\"seeding\" is the nearest")]
    [InlineData("treatment: barrier, choice", "treatment: barrier, choice: One., not-recorded: No., held: { longest: 1 days } }\n      - { treatment: ¦seeding, choice", "seeding", "cannot exclude itself", "another treatment")]
    [InlineData("    excludes:\n      - { treatment: seeding, choice: One of the two., not-recorded: Nothing is recorded., held: { longest: 120 days, mowings: 3 } }\n", "", "barrier", "does not exclude \"seeding\" in return", "the exclusion at both treatments", "treatment: barrier", "treatment: ¦barrier")]
    [InlineData("{ treatment: barrier, choice: One of the two., not", "¦{ treatment: barrier, not", null, "\"choice\" is missing", "The choice between the two")]
    [InlineData("turf: [cool-season, warm-season]", "turf: ¦[]", null, "for no site", "cool-season, warm-season or both")]
    public void What_treatments_say_of_each_other(string good, string marked, string? found, string problem, string accepted, string? elsewhere = null, string? mark = null)
    {
        string spoilt = ConfigurationFolder.Treatments.Replace(good, marked);
        if (elsewhere is not null) spoilt = spoilt.Replace(elsewhere, mark);
        Spoilt.Holds("treatments.yaml", ConfigurationFolder.Treatments, spoilt, found, problem, accepted);
    }
}
