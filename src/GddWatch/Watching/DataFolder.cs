namespace GddWatch.Watching;

/// <summary>Where things lie in the data folder.</summary>
internal static class DataFolder
{
    public static string Database(string folder) => Path.Combine(folder, "gddwatch.db");

    public static string Mail(string folder) => Path.Combine(folder, "mail");

    public static string Calendar(string folder) => Path.Combine(folder, "calendar");

    public static string Replay(string folder) => Path.Combine(folder, "replay");
}
