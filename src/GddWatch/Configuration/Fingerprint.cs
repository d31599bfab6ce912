using System.Security.Cryptography;
using System.Text;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration;

/// <summary>Tells whether a configuration is still the same.</summary>
public static class Fingerprint
{
    // Keys of a site or a treatment that change what people are told, or whether they are, but not how a day is judged.
    private static readonly HashSet<string> WordsOfAnEntry = ["name", "do", "do-past-best", "do-not", "cautions", "untested", "only-with-history", "only-with-grass", "bulletin-only", "history", "grass", "work", "prefers", "compare-with", "heads-up"];

    private static readonly HashSet<string> WordsOfAnExclusion = ["choice", "not-recorded"];

    /// <summary>Over the bytes of files.</summary>
    public static string OfFiles(params ReadOnlySpan<byte[]> files)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (byte[] file in files)
        {
            // The length keeps a line that moves from one file to the next from going unseen.
            hash.AppendData(BitConverter.GetBytes((long)file.Length));
            hash.AppendData(file);
        }

        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }

    /// <summary>Over what judging depends on: treatments without their sentences; the sites, and the region's time zone, which sites take over.</summary>
    public static string OfJudging(YamlTree? region, YamlTree? treatments)
    {
        var text = new StringBuilder();
        Write(Under(treatments, "treatments"), text);
        Write(Under(region, "sites"), text);
        Write(Under(Under(region, "region"), "time-zone"), text);
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())));
    }

    private static YamlTree? Under(YamlTree? tree, string key) => (tree as YamlGroup)?.Entries.FirstOrDefault(entry => entry.Key.Text == key).Value;

    private static void Write(YamlTree? tree, StringBuilder text, int depth = 0)
    {
        switch (tree)
        {
            case YamlValue value:
                text.Append(value.Text.Length).Append(':').Append(value.Text);
                break;
            case YamlList list:
                text.Append('[');
                foreach (YamlTree item in list.Items) Write(item, text, depth + 1);
                text.Append(']');
                break;
            case YamlGroup group:
                text.Append('{');
                foreach ((YamlValue key, YamlTree value) in group.Entries.OrderBy(entry => entry.Key.Text, StringComparer.Ordinal))
                {
                    if (depth == 1 ? WordsOfAnEntry.Contains(key.Text) : WordsOfAnExclusion.Contains(key.Text)) continue;
                    Write(key, text, depth + 1);
                    Write(value, text, depth + 1);
                }

                text.Append('}');
                break;
            default:
                text.Append('-');
                break;
        }
    }
}
