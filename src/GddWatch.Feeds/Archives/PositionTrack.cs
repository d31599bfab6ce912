using GddWatch.Agronomy.Places;
using GddWatch.Feeds.Faults;

namespace GddWatch.Feeds.Archives;

/// <summary>Follows a station's position through its files, and compares it with the site's in the end.</summary>
internal sealed class PositionTrack
{
    /// <summary>From this distance on, people are told how far the station lies from the site [km].</summary>
    public const double FarKm = 25;

    /// <summary>From this difference of height on, people are told [m]; air is about 1.3 °C colder 200 m higher up (6.5 °C a km, standard atmosphere, MEMORY).</summary>
    public const double HighM = 200;

    // Archives round positions to 0.01°, about 1 km: less is a better survey of the same place.
    private const double MovedKm = 2;
    private const double MovedM = 50;

    private StationPosition? last;
    private string lastFile = "";

    /// <summary>Takes note of a position; a change is told with its place.</summary>
    public void Meet(StationPosition position, string file, int line, FaultList faults)
    {
        if (!position.IsKnown) return;
        if (last is { } before)
        {
            double km = before.KilometresTo(position.Latitude, position.Longitude);
            double metres = position.ElevationM - before.ElevationM ?? 0;
            if (km > MovedKm || Math.Abs(metres) > MovedM) faults.Add(FaultKind.Position, PositionFaults.Moved(file, line, km, metres));
        }

        last = position;
        lastFile = file;
    }

    /// <summary>Tells where the station's latest position lies far from the site, or much higher or lower.</summary>
    public void Compare(Site site, FaultList faults)
    {
        if (last is not { } position) return;
        double km = position.KilometresTo(site.Latitude, site.Longitude);
        double metres = position.ElevationM - site.ElevationM ?? 0;
        if (km > FarKm || Math.Abs(metres) > HighM) faults.Add(FaultKind.Position, PositionFaults.Far(lastFile, site, position, km, metres));
    }
}
