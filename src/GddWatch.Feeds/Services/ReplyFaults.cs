using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Weather;
using GddWatch.Feeds.Archives;
using GddWatch.Feeds.Faults;
using GddWatch.Feeds.Reading;

namespace GddWatch.Feeds.Services;

/// <summary>What is said about the replies of services.</summary>
internal static class ReplyFaults
{
    /// <summary>What happens after a reply that cannot be used.</summary>
    public const string Again = "It is asked again at the next pass, and the days already kept stay.";

    public static Fault NotJson(string source, string start) => Refused(
        source, "The reply is not whole JSON in UTF-8, so nothing of it is used: it was cut short, or it is something else.", start, "a whole JSON document.");

    public static Fault NotAsDocumented(string source, string what, string? found, string accepted) =>
        Refused(source, $"The reply is not as the service documents it: {what} Nothing of it is used.", found, accepted);

    public static Fault WrongUnit(string source, string field, string? found, string accepted)
    {
        const string Problem = "The reply is in another unit than the one that was asked for, or names none. Nothing of it is used.";
        return Refused(source, Problem, found ?? "no unit", $"the unit {accepted}.") with { Column = field };
    }

    public static Fault WrongUnitOfOne(string source, string field, string? found, string accepted) => new()
    {
        Severity = FaultSeverity.LeftOut,
        File = source,
        Column = field,
        Problem = "These values are in another unit than the one that was asked for, or have none. They are left out.",
        Found = found ?? "no unit",
        Accepted = $"the unit {accepted}. {Again}",
    };

    public static Fault FieldAbsent(string source, string field) => new()
    {
        Severity = FaultSeverity.LeftOut,
        File = source,
        Column = field,
        Problem = "The reply does not have these values, though they were asked for.",
        Accepted = $"a list of numbers. {Again}",
    };

    public static Fault NotANumber(string source, string field, string day, string found) => new()
    {
        Severity = FaultSeverity.LeftOut,
        File = source,
        Column = field,
        Problem = $"The value of {day} is not a number. It is left out.",
        Found = found,
        Accepted = $"a number, or null where nothing is known. {Again}",
    };

    public static Fault OutsideRecords(string source, string field, DateOnly day, double value, PossibleValues possible) => new()
    {
        Severity = FaultSeverity.LeftOut,
        File = source,
        Column = field,
        Problem = $"The value of {DayText.Of(day)} is outside everything measured on earth. It is left out.",
        Found = $"{DayText.Number(value)} {possible.Unit}",
        Accepted = $"{possible.What} of {DayText.Number(possible.Lowest)} to {DayText.Number(possible.Highest)} {possible.Unit}. {Again}",
    };

    public static Fault MinimumAboveMaximum(ReadDay row) => new()
    {
        Severity = FaultSeverity.LeftOut,
        File = row.File,
        Problem = $"The minimum of {DayText.Of(row.Day)} is above its maximum. Both are left out.",
        Found = $"{DayText.Number(row[WeatherVariable.MinimumAirC])} °C and {DayText.Number(row[WeatherVariable.MaximumAirC])} °C",
        Accepted = $"a minimum that is not above the maximum. {Again}",
    };

    public static Fault OtherDays(string source, string what, string found, DateOnly first) => Refused(
        source, $"{what} Nothing of it is used.", found, $"one entry for each day without a gap, from {DayText.Of(first)} on, in the calendar of the site.");

    public static Fault OtherZone(string source, Site site, string found) => Refused(
        source, "The days of the reply are counted in another time zone than the site's. Nothing of it is used.", found, $"days in {site.TimeZone}.");

    public static Fault ElsewhereThanAsked(string source, Site site, StationPosition position, double km) => Refused(
        source, $"The reply is for a place {km:N0} km from the site. Nothing of it is used.",
        position.IsKnown ? $"{DayText.Number(position.Latitude)}, {DayText.Number(position.Longitude)}" : "no place",
        $"a grid cell near {DayText.Number(site.Latitude)}, {DayText.Number(site.Longitude)}; look at the site's latitude and longitude, south and west being negative.");

    public static Fault NoDays(string source, string what) => new()
    {
        Severity = FaultSeverity.LeftOut,
        File = source,
        Problem = what,
        Accepted = $"at least one day. {Again}",
    };

    public static Fault Refused(string source, string problem, string? found, string accepted) => new()
    {
        Severity = FaultSeverity.Refused,
        File = source,
        Problem = problem,
        Found = found,
        Accepted = $"{accepted} {Again}",
    };
}
