namespace GddWatch.Feeds.Archives.Ghcn;

/// <summary>
/// The files by year of one run, each read once for all sites that share it, however many they are. What is kept is what the sites want of it; it lives as long as this
/// object, so that a run makes one of its own and the next run sees what has changed.
/// </summary>
public sealed class YearlyFiles : IDisposable
{
    private readonly Lazy<Dictionary<string, (string Name, HashSet<string> Stations)>> wanted;
    private readonly Dictionary<string, YearlyFile> read = new(StringComparer.Ordinal);
    private readonly SemaphoreSlim oneAtATime = new(1);
    private readonly TimeProvider clock;

    /// <summary>Prepares the reading; no file is opened yet.</summary>
    /// <param name="feeds">Every feed of the run; those that are not files by year do not count.</param>
    /// <param name="baseFolder">The folder at which relative patterns start.</param>
    /// <param name="clock">Tells whether a file was changed just now.</param>
    public YearlyFiles(IEnumerable<FeedDefinition> feeds, string baseFolder, TimeProvider clock)
    {
        this.clock = clock;
        ArchiveFeedDefinition[] archives = [.. feeds.OfType<ArchiveFeedDefinition>().Where(feed => feed is { Kind: ArchiveKind.GhcnDailyByYearCsv, Station: not null })];
        wanted = new Lazy<Dictionary<string, (string, HashSet<string>)>>(() => WantedByPath(archives, baseFolder));
    }

    /// <summary>How often a file was opened since the beginning.</summary>
    public int FilesRead { get; private set; }

    /// <summary>How many megabytes the wanted files have, as they lie there.</summary>
    public int Megabytes => wanted.Value.Keys.Sum(path => File.Exists(path) ? (int)(new FileInfo(path).Length / YearlyFileReader.Megabyte) : 0);

    /// <summary>Reads every wanted file now, for somebody who watches how far it is; without this each is read when a site first asks for it.</summary>
    /// <param name="megabyteRead">Called after each megabyte.</param>
    /// <param name="stop">Stops the reading.</param>
    public async Task ReadAllAsync(Action megabyteRead, CancellationToken stop)
    {
        foreach ((string path, (string name, HashSet<string> stations)) in wanted.Value) await ReadAsync(path, name, stations.First(), stop, megabyteRead);
    }

    /// <inheritdoc/>
    public void Dispose() => oneAtATime.Dispose();

    /// <summary>What a file holds of the wanted stations; read now, or before.</summary>
    internal async Task<YearlyFile> ReadAsync(string path, string name, string station, CancellationToken stop, Action? megabyteRead = null)
    {
        await oneAtATime.WaitAsync(stop);
        try
        {
            if (read.TryGetValue(path, out YearlyFile? before)) return before;
            FilesRead++;
            bool isWanted = wanted.Value.TryGetValue(path, out (string Name, HashSet<string> Stations) each);
            // A file that was put there after the patterns were looked at is wanted by whoever asks for it first.
            YearlyFileReader reader = new(name, isWanted ? each.Stations : [station], clock);
            YearlyFile file = await reader.ReadAsync(path, megabyteRead, stop);
            if (isWanted) read[path] = file;
            return file;
        }
        finally
        {
            oneAtATime.Release();
        }
    }

    private static Dictionary<string, (string Name, HashSet<string> Stations)> WantedByPath(ArchiveFeedDefinition[] archives, string baseFolder)
    {
        Dictionary<string, (string Name, HashSet<string> Stations)> byPath = new(StringComparer.Ordinal);
        foreach (IGrouping<string, ArchiveFeedDefinition> pattern in archives.GroupBy(feed => feed.Files, StringComparer.Ordinal))
        {
            foreach (string name in FilePattern.Find(pattern.Key, baseFolder))
            {
                string path = Path.GetFullPath(name, Path.GetFullPath(baseFolder));
                if (!byPath.ContainsKey(path)) byPath[path] = (name, new HashSet<string>(StringComparer.Ordinal));
                byPath[path].Stations.UnionWith(pattern.Select(feed => feed.Station!));
            }
        }

        return byPath;
    }
}
