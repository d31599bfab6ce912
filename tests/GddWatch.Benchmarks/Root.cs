namespace GddWatch.Benchmarks;

/// <summary>The folder of the repository.</summary>
internal static class Root
{
    /// <summary>Above this program.</summary>
    /// <exception cref="InvalidOperationException">This program does not lie in it.</exception>
    public static string Find()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "GddWatch.sln"))) folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException("The program is not below the folder of GddWatch.sln.");
    }
}
