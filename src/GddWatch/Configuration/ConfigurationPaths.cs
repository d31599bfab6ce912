namespace GddWatch.Configuration;

/// <summary>
/// Where things lie: paths in the files start at the folder that holds the configuration folder. They stay relative to the current folder where the
/// configuration folder was given so, since that is how people read them in messages.
/// </summary>
public sealed class ConfigurationPaths
{
    private readonly string configFolder;
    private readonly bool isRelative;

    /// <summary>The paths that go with a configuration folder.</summary>
    public ConfigurationPaths(string configFolder)
    {
        this.configFolder = configFolder;
        isRelative = !Path.IsPathRooted(configFolder);
        string full = Path.TrimEndingDirectorySeparator(Path.GetFullPath(configFolder));
        BaseFolder = Path.GetDirectoryName(full) ?? full;
    }

    /// <summary>The full path of the folder that holds the configuration folder.</summary>
    public string BaseFolder { get; }

    /// <summary>A file or folder inside the configuration folder.</summary>
    public string InConfiguration(string name) => Path.Combine(configFolder, name);

    /// <summary>A path as it was written, ready to open; a / at its end, which makes it a folder, stays.</summary>
    public string Resolve(string written)
    {
        string full = Path.GetFullPath(written, BaseFolder);
        return isRelative && !Path.IsPathRooted(written) ? Path.GetRelativePath(Path.GetFullPath("."), full) : full;
    }
}
