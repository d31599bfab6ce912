using System.IO.Enumeration;

namespace GddWatch.Feeds.Archives;

/// <summary>Finds the files of a path in which "*" stands for any text within one folder or file name.</summary>
internal static class FilePattern
{
    /// <summary>The matching files as paths that begin as the pattern does, in the order of their names; none where a folder is missing or closed.</summary>
    public static IReadOnlyList<string> Find(string pattern, string baseFolder)
    {
        string plain = pattern.Replace('\\', '/');
        List<string> found = [plain.StartsWith('/') ? "/" : ""];
        string[] parts = plain.Split('/', StringSplitOptions.RemoveEmptyEntries);
        for (int i = 0; i < parts.Length; i++)
        {
            bool isLast = i == parts.Length - 1;
            string part = parts[i];
            found = [.. found.SelectMany(folder => Matches(folder, part, isLast, baseFolder))];
        }

        return found;
    }

    private static IEnumerable<string> Matches(string folder, string part, bool isLast, string baseFolder)
    {
        if (!part.Contains('*', StringComparison.Ordinal))
        {
            string named = folder + part;
            if (!isLast) return [named + "/"];
            return File.Exists(Path.GetFullPath(named, Path.GetFullPath(baseFolder))) ? [named] : [];
        }

        string place = Path.GetFullPath(folder.Length == 0 ? "." : folder, Path.GetFullPath(baseFolder));
        // "?" is a letter like any other here; the runtime would let it stand for any.
        string expression = part.Replace("?", "\\?", StringComparison.Ordinal);
        try
        {
            return (isLast ? Directory.GetFiles(place) : Directory.GetDirectories(place))
                .Select(each => Path.GetFileName(each))
                .Where(name => FileSystemName.MatchesSimpleExpression(expression, name, ignoreCase: false))
                .Order(StringComparer.Ordinal)
                .Select(name => folder + name + (isLast ? "" : "/"));
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            return [];
        }
    }
}
