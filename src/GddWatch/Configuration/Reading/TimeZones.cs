using System.Text.RegularExpressions;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Reading;

/// <summary>Checks the names of time zones.</summary>
public static partial class TimeZones
{
    /// <summary>Faults a name that this machine knows no time zone by.</summary>
    public static void Check(Placed<string> zone, FaultList faults)
    {
        if (IanaName().IsMatch(zone.Value) && TimeZoneInfo.TryFindSystemTimeZoneById(zone.Value, out _)) return;
        string? nearest = NearestWord.Of(zone.Value, TimeZoneInfo.GetSystemTimeZones().Select(each => each.Id));
        faults.Add(zone.Place, "There is no such time zone.", $"{(nearest is null ? "" : $"\"{nearest}\" is the nearest; ")}a name of the tz database, such as America/Chicago");
    }

    [GeneratedRegex("^[A-Za-z][A-Za-z0-9_+-]*(/[A-Za-z0-9_+-]+)*$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex IanaName();
}
