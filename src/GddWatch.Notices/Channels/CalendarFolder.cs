using System.Collections.Concurrent;
using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Places;
using GddWatch.Notices.Composing;

namespace GddWatch.Notices.Channels;

/// <summary>
/// The calendars that calendar programs read: one file of all windows and one of each site's. A file is written beside under another name, flushed to the disk and then given its name, so that
/// whoever reads it finds the one before or the new one, never a part.
/// </summary>
public sealed class CalendarFolder
{
    /// <summary>The name of the file of all windows, without its ending.</summary>
    private const string All = "windows";

    private const string Ending = ".ics";

    private const string Unfinished = ".unfinished";

    private const UnixFileMode OwnersFile = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    /// <summary>Of how many sites there is a file of all windows at most: one of more than some ten megabytes no calendar program reads; DESIGN.</summary>
    public const int MostSitesInOne = 500;

    /// <summary>How many files are on their way to the disk at once: each waits for it, and hardly any for a processor.</summary>
    private const int AtOnce = 16;

    private readonly string folder;

    private readonly WrittenEntries entries = new();

    // The entries of each file, as far as this folder has written or read it.
    private readonly ConcurrentDictionary<string, IReadOnlyList<WrittenEntry>> entriesOfFiles = new(StringComparer.Ordinal);

    /// <summary>The folder; it is made, for its owner alone, with the first file.</summary>
    public CalendarFolder(string folder)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(folder);
        this.folder = folder;
    }

    /// <summary>Puts into words what the calendars say now; nothing is written yet. A site whose windows are not given, since it could not be judged, keeps its file.</summary>
    /// <param name="region">The region with its sites.</param>
    /// <param name="windows">How the windows stand, by the ids of the sites.</param>
    /// <param name="stop">Stops between two sites.</param>
    public CalendarSheets Prepare(Region region, IReadOnlyDictionary<string, IReadOnlyList<Notice>> windows, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(region);
        ArgumentNullException.ThrowIfNull(windows);
        var written = new WrittenEntry[]?[region.Sites.Count];
        var failures = new string?[region.Sites.Count];
        Parallel.For(0, written.Length, new ParallelOptions { CancellationToken = stop }, i =>
        {
            if (!windows.TryGetValue(region.Sites[i].Id, out IReadOnlyList<Notice>? its)) return;
            try
            {
                written[i] = [.. CalendarFile.TextsOf(its, region.OperatorAddress, region.Remark).Select(entries.Of)];
            }
            catch (Exception failure) when (failure is not OperationCanceledException)
            {
                // The others are not to be lost over it.
                failures[i] = $"The calendar of {region.Sites[i].Name} could not be made: {failure.Message}";
            }
        });
        entries.NextDay();
        List<CalendarSheet> sheets = [.. region.Sites.Zip(written).Where(each => each.Second is not null).Select(each => new CalendarSheet(FileOf(each.First.Id), NameOf(each.First.Name), each.Second!))];
        List<string> files = [.. region.Sites.Select(site => FileOf(site.Id))];
        if (region.Sites.Count > MostSitesInOne) return new CalendarSheets(sheets, files, [.. failures.OfType<string>()]);
        sheets.Add(new CalendarSheet(All, NameOf(region.Name), [.. region.Sites.Zip(written).SelectMany(each => each.Second ?? entriesOfFiles.GetValueOrDefault(FileOf(each.First.Id), []))]));
        return new CalendarSheets(sheets, [All, .. files], [.. failures.OfType<string>()]);
    }

    /// <summary>Writes those that say something new. What is there of sites that are no more is removed.</summary>
    /// <param name="sheets">What they say.</param>
    /// <param name="asOf">The instant of the pass.</param>
    /// <param name="stop">Stops between two files.</param>
    /// <returns>Why it could not be done, in a sentence; null where it was.</returns>
    public async Task<string?> WriteAsync(CalendarSheets sheets, DateTimeOffset asOf, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        try
        {
            MakeFolder();
            await Parallel.ForEachAsync(sheets.All, new ParallelOptions { CancellationToken = stop, MaxDegreeOfParallelism = AtOnce }, async (sheet, token) => await WriteAsync(sheet, asOf, token));
            RemoveAllBut(sheets.Files);
            return null;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return $"The calendars could not be written into {folder}: {fault.Message} Check that the folder can be written to and that the disk has room.";
        }
    }

    /// <summary>An underscore is in no site's id, so that a site that is called like the file of all windows has one of its own.</summary>
    private static string FileOf(string site) => SafeFileName.For(string.Equals(site, All, StringComparison.OrdinalIgnoreCase) ? $"_{site}" : site);

    private static string NameOf(string place) => $"{place}: windows of lawn tasks";

    private async Task WriteAsync(CalendarSheet sheet, DateTimeOffset asOf, CancellationToken stop)
    {
        stop.ThrowIfCancellationRequested();
        string path = Path.Combine(folder, $"{sheet.File}{Ending}");
        // Bringing a file safely to the disk takes its time, and of thousands few change from one day to the next.
        bool isThere = File.Exists(path);
        if (isThere && entriesOfFiles.TryGetValue(sheet.File, out IReadOnlyList<WrittenEntry>? before) && before.SequenceEqual(sheet.Entries, ReferenceEqualityComparer.Instance)) return;
        byte[] calendar = CalendarFile.Feed(sheet.Name, sheet.Entries, asOf);
        if (!isThere || !CalendarFile.SaysTheSame(await File.ReadAllBytesAsync(path, stop), calendar)) await WriteAsync(path, calendar);
        entriesOfFiles[sheet.File] = sheet.Entries;
    }

    private static async Task WriteAsync(string path, byte[] calendar)
    {
        var options = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.Write, Share = FileShare.None, Options = FileOptions.Asynchronous };
        if (!OperatingSystem.IsWindows()) options.UnixCreateMode = OwnersFile;
        await using (var stream = new FileStream($"{path}{Unfinished}", options))
        {
            // Not to be broken off within a file: it is small.
            await stream.WriteAsync(calendar, CancellationToken.None);
            stream.Flush(flushToDisk: true);
        }

        File.Move($"{path}{Unfinished}", path, overwrite: true);
    }

    private void MakeFolder()
    {
        if (OperatingSystem.IsWindows()) Directory.CreateDirectory(folder);
        else Directory.CreateDirectory(folder, OwnersFile | UnixFileMode.UserExecute);
    }

    private void RemoveAllBut(IReadOnlyCollection<string> names)
    {
        HashSet<string> kept = [.. names.Select(name => $"{name}{Ending}")];
        foreach (string file in Directory.EnumerateFiles(folder).Where(file => !kept.Contains(Path.GetFileName(file))))
        {
            if (file.EndsWith(Ending, StringComparison.Ordinal) || file.EndsWith(Unfinished, StringComparison.Ordinal)) File.Delete(file);
        }
    }
}
