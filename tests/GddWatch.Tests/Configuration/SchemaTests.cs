using System.Globalization;
using System.Text.Json.Nodes;
using GddWatch.Configuration;
using GddWatch.Configuration.Schemas;
using GddWatch.Configuration.Yaml;
using NJsonSchema;
using NJsonSchema.Validation;
using Xunit;

namespace GddWatch.Tests.Configuration;

/// <summary>
/// The schemas that editors use. To renew the committed files after a change of the types, run this test with the environment variable
/// GDDWATCH_RENEW set to "schemas".
/// </summary>
public sealed class SchemaTests
{
    private static readonly string Folder = Path.Combine(SharedFiles.RepositoryRoot, "config");

    public static TheoryData<string, string> Files => new() { { "region.yaml", "schemas/region.schema.json" }, { "treatments.yaml", "schemas/treatments.schema.json" } };

    [Theory]
    [MemberData(nameof(Files))]
    public void The_committed_schema_is_what_the_types_give(string yaml, string schema)
    {
        Assert.NotEmpty(yaml);
        string path = Path.Combine(Folder, schema);
        if (Environment.GetEnvironmentVariable("GDDWATCH_RENEW") == "schemas") File.WriteAllText(path, ConfigurationSchemas.All[schema]);

        Assert.Equal(ConfigurationSchemas.All[schema], File.ReadAllText(path));
    }

    [Theory]
    [MemberData(nameof(Files))]
    public async Task The_sample_file_passes_its_schema_and_names_it_in_its_first_line(string yaml, string schema)
    {
        string text = await File.ReadAllTextAsync(Path.Combine(Folder, yaml), TestContext.Current.CancellationToken);

        Assert.StartsWith($"# yaml-language-server: $schema={schema}\n", text);
        Assert.Empty(await FaultsOf(text, schema));
    }

    [Theory]
    [InlineData("region.yaml", "    elevation: 250 m", "    elevation: 250", "a bare number")]
    [InlineData("region.yaml", "    elevation: 250 m", "    elevaton: 250 m", "an unknown key")]
    [InlineData("region.yaml", "    turf: [warm-season]", "    turf: [hot-season]", "an unknown word")]
    [InlineData("region.yaml", "    sites: all", "    sites: some", "a word where all or a list is due")]
    [InlineData("treatments.yaml", "rises-above: 49 °F", "rises-above: 50 K", "an unknown unit")]
    [InlineData("treatments.yaml", "method: simple average, from: 01-01 }", "from: 01-01 }", "a threshold without its method")]
    [InlineData("treatments.yaml", "        - calendar: { not-before: 05-01 }", "        - { calendar: { not-before: 05-01 }, heat-sum: { reaches: 1 °C-days, base: 1 °C, method: single sine, from: 01-01 } }", "two conditions in one")]
    public async Task An_editor_marks_what_the_program_refuses(string yaml, string good, string bad, string what)
    {
        CancellationToken stop = TestContext.Current.CancellationToken;
        string text = await File.ReadAllTextAsync(Path.Combine(Folder, yaml), stop);
        Assert.Contains(good, text);
        string spoilt = text.Replace(good, bad);

        Assert.True((await FaultsOf(spoilt, $"schemas/{Path.GetFileNameWithoutExtension(yaml)}.schema.json")).Count > 0, $"The schema lets {what} pass.");
        using var folder = new ConfigurationFolder(await File.ReadAllTextAsync(Path.Combine(Folder, "region.yaml"), stop), await File.ReadAllTextAsync(Path.Combine(Folder, "treatments.yaml"), stop));
        Assert.Empty(folder.Read().Faults);
        folder.Write(yaml, spoilt);
        Assert.NotEmpty(folder.Read().Faults);
    }

    private static async Task<ICollection<ValidationError>> FaultsOf(string yaml, string schema)
    {
        JsonSchema read = await JsonSchema.FromJsonAsync(await File.ReadAllTextAsync(Path.Combine(Folder, schema), TestContext.Current.CancellationToken), TestContext.Current.CancellationToken);
        YamlTree tree = YamlTreeReader.Read(yaml, new FaultList("test"))!;
        return read.Validate(ToJson(tree)!.ToJsonString());
    }

    /// <summary>The JSON that an editor's YAML reader makes of a tree: plain numbers and truths as such, all else text (YAML 1.2 core schema).</summary>
    private static JsonNode? ToJson(YamlTree tree) => tree switch
    {
        YamlGroup group => new JsonObject(group.Entries.Select(entry => KeyValuePair.Create(entry.Key.Text, ToJson(entry.Value)))),
        YamlList list => new JsonArray([.. list.Items.Select(ToJson)]),
        YamlValue { IsAbsent: true } => null,
        YamlValue { IsQuoted: false, Text: "true" or "false" } truth => JsonValue.Create(truth.Text == "true"),
        YamlValue { IsQuoted: false } value when double.TryParse(value.Text, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) => JsonValue.Create(number),
        YamlValue value => JsonValue.Create(value.Text),
        _ => throw new ArgumentException($"No JSON for {tree.Kind}.", nameof(tree)),
    };
}
