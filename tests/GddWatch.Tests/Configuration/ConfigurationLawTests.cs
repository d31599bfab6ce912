using System.Text.RegularExpressions;
using CsCheck;
using GddWatch.Configuration;
using Xunit;

namespace GddWatch.Tests.Configuration;

/// <summary>What holds for any bad file: a fault, never an exception.</summary>
public sealed class ConfigurationLawTests
{
    private static readonly string[] Files = ["region.yaml", "treatments.yaml"];

    [Fact]
    public void Any_mistyped_key_gives_a_fault_that_shows_it_and_never_an_exception()
    {
        // A letter is put into, taken out of or changed in a key of the sample; letters that stand in no key.
        Gen<(string File, int Key, int At, char Letter, int Way)> typo = Gen.Select(Gen.OneOf(Files), Gen.Int[0, 10_000], Gen.Int[0, 30], Gen.OneOf('q', 'j', '7'), Gen.Int[0, 2]);
        typo.Sample(
            each =>
            {
                using var folder = new ConfigurationFolder();
                string text = folder.TextOf(each.File);
                List<Group> keys = KeysOf(text);
                Group place = keys[each.Key % keys.Count];
                string key = place.Value;
                int at = each.At % key.Length;
                string mistyped = each.Way switch
                {
                    0 => key.Insert(at, $"{each.Letter}"),
                    1 when key.Length > 2 => key.Remove(at, 1),
                    _ => key[..at] + each.Letter + key[(at + 1)..],
                };
                folder.Write(each.File, text[..place.Index] + mistyped + text[(place.Index + key.Length)..]);

                ConfigurationReading reading = folder.Read();

                Assert.Null(reading.Configuration);
                int line = text[..place.Index].Count(letter => letter == '\n') + 1;
                Assert.Contains(reading.Faults, fault => fault.Found == mistyped && fault.Line == line && fault.File == folder.PathOf(each.File));
            },
            iter: 200);
    }

    [Fact]
    public void Any_cut_or_overwritten_file_gives_a_configuration_or_faults_and_never_an_exception()
    {
        Gen<(string File, int At, int Length, string Text)> damage = Gen.Select(
            Gen.OneOf(Files), Gen.Int[0, 5000], Gen.Int[0, 40], Gen.String[Gen.OneOf("&*!|>{}[],:#-?%@`\"' \t\n\0\u0007°½١az09".ToCharArray()), 0, 6]);
        damage.Sample(
            each =>
            {
                using var folder = new ConfigurationFolder();
                string text = folder.TextOf(each.File);
                int at = each.At % text.Length;
                folder.Write(each.File, text[..at] + each.Text + text[Math.Min(text.Length, at + each.Length)..]);

                ConfigurationReading reading = folder.Read();

                Assert.Equal(reading.Configuration is null, reading.Faults.Count > 0);
                Assert.All(reading.Faults, fault => Assert.NotEmpty(fault.ToString()));
            },
            iter: 400);
    }

    /// <summary>The places of the keys that the program knows; "label" is the name of a caution, which is a person's own.</summary>
    private static List<Group> KeysOf(string text) =>
        [.. Regex.Matches(text, "(?<key>[a-z][a-z-]*):", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(1)).Select(match => match.Groups["key"]).Where(key => key.Value != "label")];
}
