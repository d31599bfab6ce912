namespace GddWatch.Tests;

/// <summary>The repository's own folder, and real weather beside it that is not part of the repository.</summary>
public static class SharedFiles
{
    /// <summary>The folder that holds GddWatch.sln.</summary>
    public static string RepositoryRoot { get; } = FindRoot();

    /// <summary>
    /// A file or folder in ../shared. Where it is not there the test is skipped, or fails if the environment variable GDDWATCH_REQUIRE contains "shared".
    /// </summary>
    public static string Find(string path)
    {
        string full = Path.GetFullPath(Path.Combine(RepositoryRoot, "..", "shared", path));
        if (Path.Exists(full)) return full;
        Outside.Missing("shared", $"This test reads real weather from ../shared/{path}, which is not beside the repository.");
        return full;
    }

    private static string FindRoot()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "GddWatch.sln"))) folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException($"No GddWatch.sln above {AppContext.BaseDirectory}.");
    }
}
