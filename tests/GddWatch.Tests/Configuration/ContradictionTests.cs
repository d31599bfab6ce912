using Xunit;

namespace GddWatch.Tests.Configuration;

/// <summary>Which parts of an "all" can never be met on the same day, and which only look so.</summary>
public sealed class ContradictionTests
{
    private const string Closing = "closing:\n      days-before-first-freeze: { at-most: 45 days, chance: 50 %, fallback: 10-15 }";
    private const string Warm = "{ soil-temperature: { depth: 5 cm, mean-over: 5 days, rises-above: 60 °F, held: 3 of 5 days } }";

    [Theory]
    [InlineData("{ soil-temperature: { depth: 5 cm, mean-over: 5 days, falls-below: 50 °F, held: 3 of 5 days } }", "soil temperature")]
    [InlineData("{ all: [ { soil-temperature: { depth: 5 cm, mean-over: 5 days, falls-below: 50 °F, held: 5 days } } ] }", "soil temperature")]
    public void Limits_on_the_same_soil_that_leave_nothing_between_them_are_refused(string other, string problem) => Refused(Warm, other, problem);

    [Theory]
    [InlineData("{ air-temperature: { of: maximum, above: 80 °F } }", "{ air-temperature: { of: maximum, below: 70 °F } }", "daily high of the air")]
    [InlineData("{ air-temperature: { of: maximum, above: 80 °F, lets-go-by: 4 °F } }", "{ air-temperature: { of: maximum, below: 70 °F } }", "air")]
    [InlineData("{ air-temperature: { of: maximum, above: 80 °F, next: 2 days } }", "{ air-temperature: { of: maximum, below: 70 °F, next: 1 days } }", "daily high of the air")]
    [InlineData("{ growth-potential: { turf: cool-season, mean-over: 7 days, at-least: 60 % } }", "{ growth-potential: { turf: cool-season, mean-over: 7 days, at-most: 50 % } }", "growth potential")]
    [InlineData("{ growth-potential: { turf: cool-season, mean-over: 7 days, at-least: 60 %, direction: rising } }", "{ growth-potential: { turf: cool-season, mean-over: 7 days, at-least: 50 %, direction: falling } }", "growth potential")]
    [InlineData("{ rain: { in-last: 2 days, at-least: 10 mm } }", "{ rain: { in-last: 2 days, at-most: 5 mm } }", "rain")]
    [InlineData("{ root-zone-depletion: { turf: cool-season, at-least: 60 % } }", "{ root-zone-depletion: { turf: cool-season, at-most: 50 % } }", "root zone")]
    [InlineData("{ since-treatment: { treatment: barrier, at-least: 60 days } }", "{ since-treatment: { treatment: barrier, at-most: 50 days } }", "Barrier")]
    public void So_are_limits_on_the_same_air_growth_water_or_record(string one, string other, string problem) => Refused(one, other, problem);

    [Theory]
    // Warm on three of the last five days and cold on two of them can be.
    [InlineData(Warm, "{ soil-temperature: { depth: 5 cm, mean-over: 5 days, falls-below: 50 °F, held: 2 of 5 days } }")]
    [InlineData(Warm, "{ soil-temperature: { depth: 5 cm, mean-over: 5 days, falls-below: 50 °F, held: 3 of 8 days } }")]
    // Met at 60 °F and kept down to 45 °F, it is still met when the soil falls below 50 °F.
    [InlineData("{ soil-temperature: { depth: 5 cm, mean-over: 5 days, rises-above: 60 °F, held: 1 day, lets-go-at: 45 °F } }", "{ soil-temperature: { depth: 5 cm, mean-over: 5 days, falls-below: 50 °F, held: 1 day } }")]
    [InlineData("{ air-temperature: { of: maximum, above: 72 °F, lets-go-by: 4 °F } }", "{ air-temperature: { of: maximum, below: 70 °F } }")]
    [InlineData(Warm, "{ soil-temperature: { depth: 5 cm, mean-over: 7 days, falls-below: 50 °F, held: 3 of 5 days } }")]
    [InlineData(Warm, "{ any: [ { soil-temperature: { depth: 5 cm, mean-over: 5 days, falls-below: 50 °F, held: 3 of 5 days } }, { air-temperature: { of: maximum, below: 85 °F } } ] }")]
    [InlineData("{ air-temperature: { of: maximum, above: 70 °F } }", "{ air-temperature: { of: maximum, below: 70 °F } }")]
    [InlineData("{ growth-potential: { turf: cool-season, mean-over: 7 days, at-least: 60 % } }", "{ growth-potential: { turf: cool-season, mean-over: 7 days, at-most: 90 %, of-usual-peak: true } }")]
    [InlineData("{ rain: { in-last: 5 days, at-least: 10 mm } }", "{ rain: { in-last: 2 days, at-most: 5 mm } }")]
    public void Limits_that_can_be_met_on_the_same_day_are_taken(string one, string other)
    {
        using var folder = new ConfigurationFolder();
        folder.Replace("treatments.yaml", Closing, $"closing:\n      all: [ {one}, {other} ]");
        Assert.Empty(folder.Read().Faults);
    }

    [Theory]
    [InlineData("days-after-last-freeze: { at-least: 14 days, chance: 90 %, freeze: 32 °F, fallback: 05-01 }")]
    [InlineData("days-before-growth-falls: { turf: cool-season, under: 50 %, at-most: 28 days, fallback: 10-15 }")]
    [InlineData("root-zone-depletion: { turf: cool-season, at-least: 15 mm }")]
    [InlineData("root-zone-depletion: { turf: cool-season, at-most: 0.6 in }")]
    public void Every_way_of_writing_a_condition_is_taken(string condition)
    {
        using var folder = new ConfigurationFolder();
        folder.Replace("treatments.yaml", Closing, $"closing:\n      {condition}");
        Assert.Empty(folder.Read().Faults);
    }

    private static void Refused(string one, string other, string problem) =>
        Spoilt.Holds("treatments.yaml", Closing, $"closing:\n      all: ¦[ {one}, {other} ]", null, problem, "limits that leave something between them");
}
