using System.Globalization;
using GddWatch.Agronomy.Places;
using GddWatch.Feeds.Archives;

namespace GddWatch.Feeds.Faults;

/// <summary>What is said about where a station stands.</summary>
internal static class PositionFaults
{
    public static Fault Far(string file, Site site, StationPosition position, double km, double metresHigher) => new()
    {
        Severity = FaultSeverity.Remark,
        File = file,
        Problem = km > PositionTrack.FarKm
            ? $"The station lies {Whole(km)} km from the site{(Math.Abs(metresHigher) > PositionTrack.HighM ? $" and {Height(metresHigher)} than it" : "")}. Its days are used."
            : $"The station lies {Height(metresHigher)} than the site. Its days are used.",
        Found = $"{Place(position.Latitude, position.Longitude, position.ElevationM)}; the site is at {Place(site.Latitude, site.Longitude, site.ElevationM)}",
        Accepted = $"a station within {PositionTrack.FarKm:0} km and {PositionTrack.HighM:0} m of height of the site; look at the site's latitude and longitude, south and west being negative.",
    };

    public static Fault Moved(string file, int line, double km, double metresHigher) => new()
    {
        Severity = FaultSeverity.Remark,
        File = file,
        Line = line,
        Problem = $"From here on the station is said to stand elsewhere: {DayText.Number(Math.Round(km, 1))} km away"
            + (metresHigher == 0 ? "." : $" and {Height(metresHigher)}.") + " The days before and after are used as one.",
        Accepted = "a station that stayed where it was; years before the move may have been warmer or colder.",
    };

    private static string Height(double metresHigher) => $"{Whole(Math.Abs(metresHigher))} m {(metresHigher > 0 ? "higher" : "lower")}";

    private static string Whole(double value) => value.ToString("N0", CultureInfo.InvariantCulture);

    private static string Place(double latitude, double longitude, double? elevationM) =>
        $"{DayText.Number(latitude)}, {DayText.Number(longitude)}{(elevationM is { } metres ? $", {Whole(metres)} m" : "")}";
}
