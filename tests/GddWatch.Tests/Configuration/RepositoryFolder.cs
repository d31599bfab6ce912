namespace GddWatch.Tests.Configuration;

/// <summary>Where the repository lies, found from the folder of the tests.</summary>
internal static class RepositoryFolder
{
    public static string Path { get; } = Find();

    private static string Find()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(System.IO.Path.Combine(folder.FullName, "GddWatch.sln"))) folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException($"No GddWatch.sln above {AppContext.BaseDirectory}.");
    }
}
