using GddWatch.Agronomy.Places;
using GddWatch.Feeds.Faults;
using GddWatch.Feeds.Reading;

namespace GddWatch.Feeds.Archives.Ghcn;

/// <summary>Files of GHCN-Daily that hold one station each: ".dly", or CSV.</summary>
/// <param name="definition">Which files.</param>
/// <param name="baseFolder">The folder at which a relative pattern starts.</param>
/// <param name="clock">Tells whether a file was changed just now.</param>
public sealed class GhcnStationArchive(ArchiveFeedDefinition definition, string baseFolder, TimeProvider clock) : IWeatherFeed
{
    /// <inheritdoc/>
    public string Name => definition.Files;

    /// <inheritdoc/>
    public async Task<FeedReading> ReadAsync(Site site, DateOnly today, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(site);
        FaultList faults = new();
        GhcnSeries series = new(definition, site, today, faults);
        StationChoice choice = new(definition.Station);
        IReadOnlyList<string> names = FilePattern.Find(definition.Files, baseFolder);
        if (names.Count == 0) faults.Add(FaultKind.Files, FileFaults.NoMatch(Name));
        bool anyRead = false;
        foreach (string name in names)
        {
            stop.ThrowIfCancellationRequested();
            if (await WeatherFile.ReadAsync(Path.GetFullPath(name, Path.GetFullPath(baseFolder)), name, clock, faults, stop) is not { } file) continue;
            anyRead = true;
            GhcnStationDays days = new(name);
            if (!Read(file, choice, series.Positions, days)) faults.AddAll(days.Faults);
            else if (!days.IsEmpty) series.Add(days);
        }

        if (choice.IsAmbiguous)
        {
            faults.Add(FaultKind.Station, GhcnFaults.SeveralStations(Name, choice.Others.Prepend(choice.Taken!)));
            return new FeedReading(null, faults.Told(refusalsAreLeftOut: false));
        }

        if (anyRead && choice.Taken is null && definition.Station is { } station) faults.Add(FaultKind.Station, GhcnFaults.NoSuchStation(Name, station, choice.Others));
        return series.Finish(choice.Taken);
    }

    private bool Read(WeatherFile file, StationChoice choice, PositionTrack positions, GhcnStationDays days)
    {
        if (definition.Kind == ArchiveKind.GhcnDailyStationCsv) return new GhcnStationCsvFile(file, choice, positions, days).Read();
        GhcnDlyFile.Read(file, choice, days);
        return true;
    }
}
