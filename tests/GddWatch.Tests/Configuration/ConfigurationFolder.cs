using GddWatch.Configuration;
using GddWatch.Feeds.Faults;
using Xunit;

namespace GddWatch.Tests.Configuration;

/// <summary>A copy of the sample configuration in a folder of its own, where a test spoils something.</summary>
internal sealed class ConfigurationFolder : IDisposable
{
    private readonly DirectoryInfo home = Directory.CreateTempSubdirectory("gddwatch-config-");

    public ConfigurationFolder()
    {
        Directory.CreateDirectory(Path);
        foreach (string file in (string[])["region.yaml", "treatments.yaml"])
        {
            File.Copy(System.IO.Path.Combine(RepositoryFolder.Path, "config", file), PathOf(file));
        }
    }

    public string Path => System.IO.Path.Combine(home.FullName, "config");

    public string PathOf(string file) => System.IO.Path.Combine(Path, file);

    public string TextOf(string file) => File.ReadAllText(PathOf(file));

    public void Write(string file, string text) => File.WriteAllText(PathOf(file), text);

    /// <summary>Replaces a text that stands in the file; the first place where it stands.</summary>
    public ConfigurationFolder Replace(string file, string good, string bad)
    {
        string text = TextOf(file);
        int start = text.IndexOf(good, StringComparison.Ordinal);
        Assert.True(start >= 0, $"The sample {file} no longer holds \"{good}\".");
        Write(file, text[..start] + bad + text[(start + good.Length)..]);
        return this;
    }

    public ConfigurationReading Read() => ConfigurationReader.Read(Path);

    /// <summary>The single fault of a configuration that is spoilt in one place.</summary>
    public Fault SingleFault()
    {
        ConfigurationReading reading = Read();
        Assert.Null(reading.Configuration);
        Assert.True(reading.Faults.Count == 1, string.Join('\n', reading.Faults));
        return reading.Faults[0];
    }

    public void Dispose() => home.Delete(recursive: true);
}
