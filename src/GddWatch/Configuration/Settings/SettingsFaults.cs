using GddWatch.Configuration.Yaml;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.Configuration.Json;

namespace GddWatch.Configuration.Settings;

/// <summary>Gathers what is wrong with settings, a sentence each with the key, what was found and what is accepted. A secret is named by its key, never shown.</summary>
internal sealed class SettingsFaults(string baseFolder)
{
    private readonly List<string> all = [];

    /// <summary>The folder where relative paths start.</summary>
    public string BaseFolder => baseFolder;

    /// <summary>What was found so far.</summary>
    public IReadOnlyList<string> All => all;

    /// <summary>Adds a fault.</summary>
    /// <param name="key">The key, as Section:Key.</param>
    /// <param name="found">What stands there; null where it must not be shown or nothing stands there.</param>
    /// <param name="problem">What is wrong with it.</param>
    /// <param name="accepted">What would be right.</param>
    public void Add(string key, string? found, string problem, string accepted)
    {
        string shown = found is null ? "" : $" Found: \"{string.Concat(found.Select(each => char.IsControl(each) ? '·' : each))}\".";
        all.Add($"{key}: {problem}.{shown} Accepted: {accepted}.");
    }

    /// <summary>Takes over faults that were found elsewhere.</summary>
    public void AddRange(IEnumerable<string> faults) => all.AddRange(faults);

    /// <summary>Finds keys that nobody reads.</summary>
    public void CheckKeys(IConfigurationSection section, string[] known)
    {
        foreach (IConfigurationSection child in section.GetChildren())
        {
            if (known.Contains(child.Key, StringComparer.OrdinalIgnoreCase)) continue;
            all.Add($"{section.Key}:{child.Key}: this key is not known. Accepted: {NearestWord.Hint(child.Key, known)}.");
        }
    }

    /// <summary>Finds a secret that stands in a settings file, where everybody who may read the settings reads it too.</summary>
    public void CheckSecretInFiles(IConfiguration configuration, string section, string key, Func<string, bool> isSecret)
    {
        if (configuration is not IConfigurationRoot root) return;
        foreach (JsonConfigurationProvider file in root.Providers.OfType<JsonConfigurationProvider>())
        {
            if (!file.TryGet($"{section}:{key}", out string? text) || string.IsNullOrEmpty(text) || !isSecret(text)) continue;
            all.Add($"{section}:{key}: a password stands in {Path.GetFileName(file.Source.Path)}, where it does not belong; change it and take it out. Accepted: the environment variable {section}__Password, or {section}:PasswordFile with the path of a file that holds it.");
        }
    }

    /// <summary>A password from the environment or from a file of its own; null where there is none.</summary>
    public string? ReadPassword(string section, string password, string passwordFile)
    {
        if (passwordFile.Length == 0) return password.Length > 0 ? password : null;
        string key = $"{section}:PasswordFile";
        if (password.Length > 0) Add(key, passwordFile, "there is a password besides", "one of the two");
        try
        {
            string read = File.ReadAllText(Path.GetFullPath(passwordFile, baseFolder)).TrimEnd('\r', '\n');
            if (read.Length > 0) return read;
            Add(key, passwordFile, "the file is empty", "a file that holds the password and nothing else");
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or ArgumentException)
        {
            Add(key, passwordFile, "the file cannot be read", "the path of a file that the service may read");
        }

        // A fault is told already; that the password is missing besides would only confuse.
        return "";
    }
}
