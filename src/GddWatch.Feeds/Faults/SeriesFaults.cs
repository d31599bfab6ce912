using System.Globalization;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Weather.Checks;

namespace GddWatch.Feeds.Faults;

/// <summary>What is said about the days of a feed together.</summary>
internal static class SeriesFaults
{
    public static Fault OutOfOrder(string file, int line, DateOnly day, DateOnly before, int times) => new()
    {
        Severity = FaultSeverity.Remark,
        File = file,
        Line = line,
        Problem = $"The days are not in order: {DayText.Of(day)} comes after {DayText.Of(before)}"
            + (times > 1 ? $", and {DayText.Count(times - 1, "more line goes", "more lines go")} back. " : ". ") + "All are used.",
        Accepted = "any order; from the earliest to the latest day is usual.",
    };

    public static Fault Gap(string file, int line, DateOnly first, DateOnly last)
    {
        int days = last.DayNumber - first.DayNumber + 1;
        return new Fault
        {
            Severity = FaultSeverity.Remark,
            File = file,
            Line = line,
            Problem = days == 1
                ? $"One day is missing before this line: {DayText.Of(first)}."
                : $"{DayText.Count(days, "day is", "days are")} missing before this line: {DayText.Of(first)} to {DayText.Of(last)}.",
            Accepted = "a line for every day; short holes are filled and marked, longer ones make windows unknown.",
        };
    }

    public static Fault WrongUnit(string file, Site site, TemperatureUnitVerdict verdict, TemperatureScale stated)
    {
        (string statedUnit, string otherUnit) = Units(stated);
        return new Fault
        {
            Severity = FaultSeverity.Refused,
            File = file,
            Problem = $"The temperatures cannot be {statedUnit}: {MonthSentence(site, verdict)} Read as {otherUnit} it is {DayText.Number(Math.Round(verdict.AsOtherUnitC, 1))} °C, "
                + "which fits. None of these days is used.",
            Accepted = $"units: {{ temperature: {otherUnit} }} if the numbers are {otherUnit}; else temperatures in {statedUnit}, and the right latitude of the site.",
        };
    }

    public static Fault UnlikelyPlace(string file, Site site, TemperatureUnitVerdict verdict) => new()
    {
        Severity = FaultSeverity.Remark,
        File = file,
        Problem = $"The temperatures fit the site neither in °C nor in °F: {MonthSentence(site, verdict)} They are used as they are.",
        Accepted = "the minimum and maximum of the air at the site; look at its latitude (south is negative) and elevation, and at the columns.",
    };

    public static Fault EitherUnit(string file, TemperatureUnitVerdict verdict, TemperatureScale stated)
    {
        (string statedUnit, string otherUnit) = Units(stated);
        return new Fault
        {
            Severity = FaultSeverity.Remark,
            File = file,
            Problem = $"So few months cannot show whether the temperatures are {statedUnit} or {otherUnit}: the middle of all {NameOf(verdict.Month)} days is "
                + $"{DayText.Number(Math.Round(verdict.AsStatedC, 1))} °C as {statedUnit} and would be {DayText.Number(Math.Round(verdict.AsOtherUnitC, 1))} °C as {otherUnit}, and both occur. "
                + $"They are read as {statedUnit}.",
            Accepted = "the unit as configured; compare one day that you remember.",
        };
    }

    private static string MonthSentence(Site site, TemperatureUnitVerdict verdict) =>
        $"the middle of {DayText.Count(verdict.Days, "day", "days")} of {NameOf(verdict.Month)} is {DayText.Number(Math.Round(verdict.AsStatedC, 1))} °C, while at latitude "
        + $"{DayText.Number(site.Latitude)}° and {DayText.Number(site.ElevationM)} m that month lies between {DayText.Number(Math.Round(verdict.LowestC))} and "
        + $"{DayText.Number(Math.Round(verdict.HighestC))} °C.";

    private static (string Stated, string Other) Units(TemperatureScale stated) => stated == TemperatureScale.Celsius ? ("°C", "°F") : ("°F", "°C");

    private static string NameOf(int month) => CultureInfo.InvariantCulture.DateTimeFormat.GetMonthName(month);
}
