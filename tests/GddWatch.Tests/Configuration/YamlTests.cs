using System.Text;
using GddWatch.Configuration;
using GddWatch.Configuration.Yaml;
using GddWatch.Feeds.Faults;
using Xunit;

namespace GddWatch.Tests.Configuration;

/// <summary>What is not plain YAML, and what a hostile file could try.</summary>
public sealed class YamlTests
{
    [Theory]
    [InlineData("region: { name: x\nsites: []\n", 1)]
    [InlineData("a: 1\nb: \"open\n\n", 2)]
    [InlineData("a: 1\nb: c: d\n", 2)]
    [InlineData("a: 1\nb: @c\n", 2)]
    public void A_mistake_in_the_writing_is_a_fault_with_its_line(string text, int line)
    {
        Fault fault = Assert.Single(FaultsOf(text));

        Assert.Contains("not YAML that can be read", fault.Problem);
        Assert.True(fault.Line >= line && fault.Line <= line + 2, fault.ToString());
        Assert.Contains("indented with spaces", fault.Accepted);
    }

    [Fact]
    public void A_tab_in_the_indentation_is_named_as_such()
    {
        Fault fault = Assert.Single(FaultsOf("a:\n  b: 1\n\tc: 2\n"));

        Assert.Equal((3, "1", "c: 2"), (fault.Line, fault.Column, fault.Found));
        Assert.Contains("A tab stands in the indentation", fault.Problem);
        Assert.Contains("spaces", fault.Accepted);
    }

    [Fact]
    public void References_that_multiply_without_end_are_refused_at_their_first_line()
    {
        // Ten names, each nine times the one before: 9^9 entries when written out.
        var text = new StringBuilder("a0: &a0 [x]\n");
        for (int i = 1; i < 10; i++) text.Append($"a{i}: &a{i} [{string.Join(",", Enumerable.Repeat($"*a{i - 1}", 9))}]\n");

        Fault fault = Assert.Single(FaultsOf(text.ToString()));

        Assert.Equal((1, "5", "&a0"), (fault.Line, fault.Column, fault.Found));
        Assert.Contains("not taken", fault.Problem);
    }

    [Theory]
    [InlineData("a: *b\n", "References", 4)]
    [InlineData("a: &b c\n", "Names for references", 4)]
    [InlineData("a: !!int 3\n", "Tags", 4)]
    [InlineData("a: !env HOME\n", "Tags", 4)]
    [InlineData("a: b\n---\nc: d\n", "second document", 1)]
    public void What_configuration_has_no_use_for_is_refused(string text, string problem, int column)
    {
        Fault fault = Assert.Single(FaultsOf(text));

        Assert.Contains(problem, fault.Problem);
        Assert.Equal($"{column}", fault.Column);
    }

    [Theory]
    [InlineData(20_000)]
    [InlineData(YamlTreeReader.DeepestNesting + 1)]
    public void Nesting_without_end_is_refused(int depth)
    {
        Fault fault = Assert.Single(FaultsOf($"a: {new string('[', depth)}{new string(']', depth)}"));

        Assert.Equal(1, fault.Line);
    }

    [Fact]
    public void Every_key_that_stands_twice_is_reported()
    {
        IReadOnlyList<Fault> faults = FaultsOf("a: 1\na: 2\nb: { c: 1, c: 2 }\na: 3\n");

        Assert.Equal([(2, "a"), (3, "c"), (4, "a")], faults.Select(fault => (fault.Line!.Value, fault.Found!)));
    }

    [Theory]
    [InlineData("")]
    [InlineData("# only a remark\n")]
    public void An_empty_file_is_a_fault(string text)
    {
        using var folder = new ConfigurationFolder(region: text);

        Fault fault = Assert.Single(folder.Read().Faults);

        Assert.Equal((folder.PathOf("region.yaml"), (int?)null), (fault.File, fault.Line));
        Assert.Contains("empty", fault.Problem);
    }

    [Fact]
    public void A_file_that_is_one_word_is_a_fault()
    {
        using var folder = new ConfigurationFolder(region: "region\n");

        Fault fault = Assert.Single(folder.Read().Faults);

        Assert.Contains("a group of keys: region, sites, recipients", fault.Accepted);
    }

    [Fact]
    public void Missing_files_are_faults_both_at_once()
    {
        using var folder = new ConfigurationFolder();
        File.Delete(folder.PathOf("region.yaml"));
        File.Delete(folder.PathOf("treatments.yaml"));

        ConfigurationReading reading = folder.Read();

        Assert.Equal([folder.PathOf("region.yaml"), folder.PathOf("treatments.yaml")], reading.Faults.Select(fault => fault.File));
        Assert.All(reading.Faults, fault => Assert.Contains("no such file", fault.Problem));
    }

    [Fact]
    public void A_file_in_another_encoding_is_a_fault_rather_than_a_garbled_degree_sign()
    {
        using var folder = new ConfigurationFolder();
        File.WriteAllBytes(folder.PathOf("treatments.yaml"), Encoding.Latin1.GetBytes(ConfigurationFolder.Treatments));

        Fault fault = Assert.Single(folder.Read().Faults);

        Assert.Contains("UTF-8", fault.Problem);
    }

    [Fact]
    public void A_byte_order_mark_and_carriage_returns_are_taken()
    {
        using var folder = new ConfigurationFolder();
        File.WriteAllText(folder.PathOf("region.yaml"), ConfigurationFolder.Region.Replace("\n", "\r\n"), new UTF8Encoding(encoderShouldEmitUTF8Identifier: true));

        Assert.Empty(folder.Read().Faults);
    }

    private static IReadOnlyList<Fault> FaultsOf(string text)
    {
        var faults = new FaultList("test.yaml");
        YamlTreeReader.Read(text, faults);
        return faults.InOrder;
    }
}
