using GddWatch.Agronomy.Places;
using GddWatch.Feeds.Faults;

namespace GddWatch.Feeds.Archives.Ghcn;

/// <summary>Files of GHCN-Daily by year, of which one station is the site's.</summary>
/// <param name="definition">Which files, and which station.</param>
/// <param name="baseFolder">The folder at which a relative pattern starts.</param>
/// <param name="files">The files of this run, which other sites may share.</param>
public sealed class GhcnByYearArchive(ArchiveFeedDefinition definition, string baseFolder, YearlyFiles files) : IWeatherFeed
{
    /// <inheritdoc/>
    public string Name => definition.Files;

    /// <inheritdoc/>
    public async Task<FeedReading> ReadAsync(Site site, DateOnly today, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(site);
        FaultList faults = new();
        if (definition.Station is not { } station)
        {
            faults.Add(FaultKind.Station, GhcnFaults.NoStationNamed(Name));
            return new FeedReading(null, faults.Told(refusalsAreLeftOut: false));
        }

        GhcnSeries series = new(definition, site, today, faults);
        IReadOnlyList<string> names = FilePattern.Find(definition.Files, baseFolder);
        if (names.Count == 0) faults.Add(FaultKind.Files, FileFaults.NoMatch(Name));
        SortedSet<string> others = new(StringComparer.Ordinal);
        bool anyRead = false;
        bool isThere = false;
        foreach (string name in names)
        {
            stop.ThrowIfCancellationRequested();
            YearlyFile file = await files.ReadAsync(Path.GetFullPath(name, Path.GetFullPath(baseFolder)), name, station, stop);
            faults.AddAll(file.Faults);
            others.UnionWith(file.Others);
            anyRead |= file.Stations.Count > 0 || file.Others.Count > 0;
            if (!file.Stations.TryGetValue(station, out GhcnStationDays? days) || days.IsEmpty) continue;
            isThere = true;
            series.Add(days);
        }

        if (!isThere && anyRead) faults.Add(FaultKind.Station, GhcnFaults.NoSuchStation(Name, station, [.. others.Take(5)]));
        return series.Finish(station);
    }
}
