using System.Text;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration;

/// <summary>One YAML file as far as it could be read.</summary>
public sealed class ConfigurationFile
{
    /// <summary>The largest file that is read [bytes]; a thousand sites with their comments are about a third of it.</summary>
    public const int LargestBytes = 2_000_000;

    private static readonly UTF8Encoding StrictUtf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    private ConfigurationFile(string path) => Faults = new FaultList(path);

    /// <summary>What is wrong in it.</summary>
    public FaultList Faults { get; }

    /// <summary>Its bytes, empty where it could not be read.</summary>
    public byte[] Bytes { get; private set; } = [];

    /// <summary>Its content, null where it is not YAML.</summary>
    public YamlTree? Tree { get; private set; }

    /// <summary>Reads a file.</summary>
    public static ConfigurationFile Read(string path)
    {
        var file = new ConfigurationFile(path);
        if (file.ReadText(path) is { } text) file.Tree = YamlTreeReader.Read(text, file.Faults);
        if (file.Tree is null && file.Faults.Count == 0) file.Faults.AddWhole("The file is empty.", "keys and values as in the sample configuration");
        return file;
    }

    /// <summary>The content as its type; null where there is none to be had.</summary>
    public T? Bind<T>()
        where T : TextGroup => Tree is null ? null : new YamlBinder(Faults).Bind<T>(Tree);

    /// <summary>The ids in the list under a key; null where the list cannot be found, so that nothing can be said about names.</summary>
    public IReadOnlyList<string>? NamesUnder(string key)
    {
        YamlTree? list = (Tree as YamlGroup)?.Entries.FirstOrDefault(entry => entry.Key.Text == key).Value;
        return (list as YamlList)?.Items.OfType<YamlGroup>()
            .SelectMany(group => group.Entries.Where(entry => entry.Key.Text == "id"))
            .Select(entry => entry.Value).OfType<YamlValue>().Select(value => value.Text).ToList();
    }

    private string? ReadText(string path)
    {
        try
        {
            if (!File.Exists(path))
            {
                Faults.AddWhole("There is no such file.", $"the file {Path.GetFileName(path)} in the configuration folder; --config names another folder");
                return null;
            }

            if (new FileInfo(path).Length > LargestBytes)
            {
                Faults.AddWhole("The file is larger than any configuration.", $"at most {LargestBytes} bytes");
                return null;
            }

            Bytes = File.ReadAllBytes(path);
            return StrictUtf8.GetString(Bytes).TrimStart('\uFEFF');
        }
        catch (DecoderFallbackException)
        {
            Faults.AddWhole("The file is not in UTF-8.", "a text file saved as UTF-8, so that ° and other signs are read as they were meant");
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            Faults.AddWhole($"The file cannot be read: {exception.Message}", "a file that the service may read");
        }

        return null;
    }
}
