using System.Globalization;

namespace GddWatch.Watching;

/// <summary>
/// Keeps a second worker off a data folder. The lock is the operating system's own on an open file, so that it is gone with the process, however that ends;
/// who holds it stands in a file beside, for people.
/// </summary>
internal sealed class WorkerLock : IDisposable
{
    private const string LockFile = "worker.lock";
    private const string HolderFile = "worker.txt";
    private const UnixFileMode OwnersFile = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    private readonly FileStream held;

    private WorkerLock(FileStream held) => this.held = held;

    /// <summary>Takes the lock of a folder, made where it is not there; null where another has it.</summary>
    /// <param name="folder">The data folder.</param>
    /// <param name="clock">Since when it is held.</param>
    /// <param name="zone">The time zone in which that is told.</param>
    /// <param name="taken">Who has it, in a sentence; empty where it was free.</param>
    public static WorkerLock? Take(string folder, TimeProvider clock, TimeZoneInfo zone, out string taken)
    {
        taken = "";
        MakeFolder(folder);
        FileStream stream;
        try
        {
            stream = OpenForOwner(Path.Combine(folder, LockFile), FileShare.None);
        }
        catch (IOException) when (File.Exists(Path.Combine(folder, LockFile)))
        {
            taken = $"Another worker{Holder(folder)} is at work on the data folder {folder}. Two of them would tell everything twice. Stop that one first, or give this one another folder with --data.";
            return null;
        }

        try
        {
            WriteHolder(folder, TimeZoneInfo.ConvertTime(clock.GetUtcNow(), zone));
            return new WorkerLock(stream);
        }
        catch
        {
            stream.Dispose();
            throw;
        }
    }

    public void Dispose() => held.Dispose();

    private static void WriteHolder(string folder, DateTimeOffset since)
    {
        // Put in place whole, so that nobody reads half of it.
        string unfinished = Path.Combine(folder, $"{HolderFile}.unfinished");
        using (var writer = new StreamWriter(OpenForOwner(unfinished, FileShare.Read)))
        {
            writer.Write(string.Create(CultureInfo.InvariantCulture, $"process {Environment.ProcessId}, since {since:dddd d MMMM yyyy HH:mm:ss zzz}"));
        }

        File.Move(unfinished, Path.Combine(folder, HolderFile), overwrite: true);
    }

    private static string Holder(string folder)
    {
        try
        {
            return $" ({File.ReadAllText(Path.Combine(folder, HolderFile))})";
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // It has the lock and has not come to say who it is.
            return "";
        }
    }

    private static FileStream OpenForOwner(string path, FileShare share)
    {
        var options = new FileStreamOptions { Mode = share == FileShare.None ? FileMode.OpenOrCreate : FileMode.Create, Access = FileAccess.ReadWrite, Share = share };
        if (!OperatingSystem.IsWindows()) options.UnixCreateMode = OwnersFile;
        return new FileStream(path, options);
    }

    private static void MakeFolder(string folder)
    {
        if (OperatingSystem.IsWindows()) Directory.CreateDirectory(folder);
        else Directory.CreateDirectory(folder, OwnersFile | UnixFileMode.UserExecute);
    }
}
