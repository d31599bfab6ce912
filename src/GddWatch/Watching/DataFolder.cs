using GddWatch.Storage;

namespace GddWatch.Watching;

/// <summary>Where things lie in the data folder.</summary>
internal static class DataFolder
{
    public static string Database(string folder) => Path.Combine(folder, "gddwatch.db");

    public static string Mail(string folder) => Path.Combine(folder, "mail");

    public static string Calendar(string folder) => Path.Combine(folder, "calendar");

    public static string Replay(string folder) => Path.Combine(folder, "replay");

    /// <summary>Whether the database still lies where it was opened: a file that was moved away or removed goes on taking what is written, and keeps none of it.</summary>
    /// <exception cref="StorageException">It does not.</exception>
    public static void CheckStillThere(string folder)
    {
        if (!File.Exists(Database(folder)))
            throw new StorageException($"The database {Database(folder)} has disappeared while the service was running. Put it or its latest backup back in its place, then start the service again.");
    }
}
