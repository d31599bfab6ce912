namespace GddWatch.Feeds.Archives.Ghcn;

/// <summary>
/// The files by year of one run, each read once for all sites that share it, however many they are. What is kept is what the sites want of it; it lives as long as this
/// object, so that a run makes one of its own and the next run sees what has changed.
/// </summary>
public sealed class YearlyFiles : IDisposable
{
    private readonly Lazy<Dictionary<string, HashSet<string>>> wanted;
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
        wanted = new Lazy<Dictionary<string, HashSet<string>>>(() => WantedByPath(archives, baseFolder));
    }

    /// <summary>How often a file was opened since the beginning.</summary>
    public int FilesRead { get; private set; }

    /// <inheritdoc/>
    public void Dispose() => oneAtATime.Dispose();

    /// <summary>What a file holds of the wanted stations; read now, or before.</summary>
    internal async Task<YearlyFile> ReadAsync(string path, string name, string station, CancellationToken stop)
    {
        await oneAtATime.WaitAsync(stop);
        try
        {
            if (read.TryGetValue(path, out YearlyFile? before)) return before;
            FilesRead++;
            // A file that was put there after the patterns were looked at is wanted by whoever asks for it first.
            YearlyFileReader reader = new(name, wanted.Value.TryGetValue(path, out HashSet<string>? stations) ? stations : [station], clock);
            YearlyFile file = await reader.ReadAsync(path, stop);
            if (stations is not null) read[path] = file;
            return file;
        }
        finally
        {
            oneAtATime.Release();
        }
    }

    private static Dictionary<string, HashSet<string>> WantedByPath(ArchiveFeedDefinition[] archives, string baseFolder)
    {
        Dictionary<string, HashSet<string>> byPath = new(StringComparer.Ordinal);
        foreach (IGrouping<string, ArchiveFeedDefinition> pattern in archives.GroupBy(feed => feed.Files, StringComparer.Ordinal))
        {
            foreach (string name in FilePattern.Find(pattern.Key, baseFolder))
            {
                string path = Path.GetFullPath(name, Path.GetFullPath(baseFolder));
                if (!byPath.TryGetValue(path, out HashSet<string>? stations)) byPath[path] = stations = new HashSet<string>(StringComparer.Ordinal);
                stations.UnionWith(pattern.Select(feed => feed.Station!));
            }
        }

        return byPath;
    }
}
