using System.Globalization;
using System.Text.Json;
using GddWatch.Agronomy.Places;
using GddWatch.Feeds.Archives;
using GddWatch.Feeds.Faults;

namespace GddWatch.Feeds.Services.OpenMeteo;

/// <summary>One site's part of a reply of Open-Meteo, checked before a value of it is taken.</summary>
internal static class OpenMeteoReply
{
    // The coarsest grid that it has is 0.25°, 28 km; a cell on land may be taken beside one at sea.
    private const double NearKm = 50;

    /// <summary>Takes the days of a reply into the site's, and gives the grid cell's place; null where the reply cannot be believed.</summary>
    /// <param name="source">The service as faults name it.</param>
    /// <param name="reply">The part of the reply.</param>
    /// <param name="site">The site.</param>
    /// <param name="first">The first day that was asked for.</param>
    /// <param name="last">The last day that was asked for; later ones are not taken.</param>
    /// <param name="days">Takes the values.</param>
    /// <param name="faults">Takes what was wrong.</param>
    public static StationPosition? Read(string source, JsonElement reply, Site site, DateOnly first, DateOnly last, ServiceDays days, FaultList faults)
    {
        if (reply.Member("daily") is not { ValueKind: JsonValueKind.Object } daily || reply.Member("daily_units") is not { ValueKind: JsonValueKind.Object } units)
        {
            faults.Add(FaultKind.Reply, ReplyFaults.NotAsDocumented(source, "it has no daily values with their units.", reply.Text("reason") ?? reply.Shown(), "the members daily and daily_units."));
            return null;
        }

        var position = new StationPosition(reply.Number("latitude") ?? double.NaN, reply.Number("longitude") ?? double.NaN, reply.Number("elevation"));
        double km = position.KilometresTo(site.Latitude, site.Longitude);
        if (!position.IsKnown || !(km <= NearKm))
        {
            faults.Add(FaultKind.Position, ReplyFaults.ElsewhereThanAsked(source, site, position, km));
            return null;
        }

        if (!IsInZone(reply, site, first, last))
        {
            faults.Add(FaultKind.Reply, ReplyFaults.OtherZone(source, site, $"{reply.Text("timezone") ?? "no zone"}, {reply.Number("utc_offset_seconds")?.ToString(CultureInfo.InvariantCulture) ?? "no"} seconds from UTC"));
            return null;
        }

        if (DaysOf(source, reply, daily, units, first, faults) is not { } calendar) return null;
        foreach (OpenMeteoVariable variable in OpenMeteoVariable.All)
        {
            if (variable.IsExtreme && units.Text(variable.Name) != variable.Unit)
            {
                faults.Add(FaultKind.Unit, ReplyFaults.WrongUnit(source, variable.Name, units.Text(variable.Name), variable.Unit));
                return null;
            }

            if (daily.Member(variable.Name) is { ValueKind: JsonValueKind.Array } values && values.GetArrayLength() != calendar.Count)
            {
                faults.Add(FaultKind.Reply, ReplyFaults.NotAsDocumented(
                    source, $"there are {calendar.Count} days and {values.GetArrayLength()} values of {variable.Name}.", null, "as many values as days."));
                return null;
            }
        }

        foreach (OpenMeteoVariable variable in OpenMeteoVariable.All) Take(source, variable, daily, units, calendar, last, days, faults);
        return position;
    }

    // The name may be another of the same zone; then the distance to UTC must be one that the site's zone has in those days.
    private static bool IsInZone(JsonElement reply, Site site, DateOnly first, DateOnly last)
    {
        if (reply.Number("utc_offset_seconds") is not { } seconds) return false;
        TimeZoneInfo own = TimeZoneInfo.FindSystemTimeZoneById(site.TimeZone);
        string? name = reply.Text("timezone");
        bool isSame = string.Equals(name, site.TimeZone, StringComparison.OrdinalIgnoreCase)
            || (name is not null && TimeZoneInfo.TryFindSystemTimeZoneById(name, out TimeZoneInfo? other) && HaveSameOffsets(own, other, first, last));
        return isSame && Between(first.AddDays(-1), last.AddDays(1)).Any(day => OffsetAt(own, day).TotalSeconds == seconds);
    }

    private static bool HaveSameOffsets(TimeZoneInfo left, TimeZoneInfo right, DateOnly first, DateOnly last) =>
        Between(first, last).All(day => OffsetAt(left, day) == OffsetAt(right, day));

    private static TimeSpan OffsetAt(TimeZoneInfo zone, DateOnly day) => zone.GetUtcOffset(day.ToDateTime(new TimeOnly(12, 0), DateTimeKind.Utc));

    private static IEnumerable<DateOnly> Between(DateOnly first, DateOnly last)
    {
        for (DateOnly day = first; day <= last; day = day.AddDays(1)) yield return day;
    }

    private static List<DateOnly>? DaysOf(string source, JsonElement reply, JsonElement daily, JsonElement units, DateOnly first, FaultList faults)
    {
        if (daily.Member("time") is not { ValueKind: JsonValueKind.Array } times || times.GetArrayLength() == 0)
        {
            faults.Add(FaultKind.Reply, ReplyFaults.NotAsDocumented(source, "it has no days.", null, "a list of days under time."));
            return null;
        }

        double? offset = units.Text("time") == "unixtime" ? reply.Number("utc_offset_seconds") : null;
        List<DateOnly> calendar = [];
        foreach (JsonElement time in times.EnumerateArray())
        {
            if (DayOf(time, offset) is not { } day)
            {
                faults.Add(FaultKind.Date, ReplyFaults.NotAsDocumented(source, "one of its days is not a date.", time.Shown(), "dates such as 2026-05-01."));
                return null;
            }

            if (calendar.Count == 0 && day != first)
            {
                faults.Add(FaultKind.Date, ReplyFaults.OtherDays(source, $"The days of the reply begin on {DayText.Of(day)}, not on {DayText.Of(first)} as was asked for.", DayText.Of(day), first));
                return null;
            }

            if (calendar.Count > 0 && day != calendar[^1].AddDays(1))
            {
                faults.Add(FaultKind.Date, ReplyFaults.OtherDays(
                    source, $"The days of the reply are not one after the other: after {DayText.Of(calendar[^1])} comes {DayText.Of(day)}.", DayText.Of(day), first));
                return null;
            }

            calendar.Add(day);
        }

        return calendar;
    }

    private static DateOnly? DayOf(JsonElement time, double? offsetSeconds)
    {
        if (offsetSeconds is not { } offset) return ReplyJson.AsDay(time.AsText());
        return time.AsNumber() is { } seconds && Math.Abs(seconds + offset) < 1e11 ? DateOnly.FromDateTime(DateTime.UnixEpoch.AddSeconds(seconds + offset)) : null;
    }

    private static void Take(
        string source, OpenMeteoVariable variable, JsonElement daily, JsonElement units, List<DateOnly> calendar, DateOnly last, ServiceDays days, FaultList faults)
    {
        if (daily.Member(variable.Name) is not { ValueKind: JsonValueKind.Array } values)
        {
            faults.Add(FaultKind.Reply, ReplyFaults.FieldAbsent(source, variable.Name));
            return;
        }

        if (units.Text(variable.Name) != variable.Unit)
        {
            faults.Add(FaultKind.Unit, ReplyFaults.WrongUnitOfOne(source, variable.Name, units.Text(variable.Name), variable.Unit));
            return;
        }

        int index = 0;
        foreach (JsonElement value in values.EnumerateArray())
        {
            DateOnly day = calendar[index++];
            if (day > last || value.ValueKind == JsonValueKind.Null) continue;
            if (value.AsNumber() is { } number) days.Put(source, day, variable.Variable, variable.Name, number);
            else faults.Add(FaultKind.NotANumber, ReplyFaults.NotANumber(source, variable.Name, DayText.Of(day), value.Shown()));
        }
    }
}
