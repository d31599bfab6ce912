using Xunit;

namespace GddWatch.Agronomy.Tests;

/// <summary>Reference files that lie beside the repository, not in it.</summary>
internal static class SharedFiles
{
    /// <summary>
    /// The path of a file in ../shared beside the repository's root. Without it the test is skipped, or fails where GDDWATCH_REQUIRE names "shared".
    /// </summary>
    public static string Find(string name)
    {
        DirectoryInfo? root = new(AppContext.BaseDirectory);
        while (root is not null && !File.Exists(Path.Combine(root.FullName, "GddWatch.sln"))) root = root.Parent;
        Assert.True(root is not null, $"GddWatch.sln was found in no folder above {AppContext.BaseDirectory}.");
        string path = Path.GetFullPath(Path.Combine(root.FullName, "..", "shared", name));
        if (File.Exists(path) || Directory.Exists(path)) return path;
        string message = $"This check reads ../shared/{name} beside the repository, which is not there.";
        if ((Environment.GetEnvironmentVariable("GDDWATCH_REQUIRE") ?? "").Contains("shared", StringComparison.OrdinalIgnoreCase)) Assert.Fail(message);
        Assert.Skip(message);
        return path;
    }
}
