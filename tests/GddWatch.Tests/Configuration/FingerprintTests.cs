using GddWatch.Configuration;
using Xunit;

namespace GddWatch.Tests.Configuration;

public sealed class FingerprintTests
{
    [Theory]
    [InlineData("region.yaml", "operator: {", "# a remark\noperator: {")]
    [InlineData("region.yaml", "name: Site One", "name: The first site")]
    [InlineData("region.yaml", "treatments: [barrier, seeding]", "treatments: all")]
    [InlineData("region.yaml", "  - address: crew@example.org", "  - { address: new@example.org, sites: all, treatments: all }\n  - address: crew@example.org")]
    [InlineData("region.yaml", "    soil: silt loam", "    history: [grubs]\n    soil: silt loam")]
    [InlineData("treatments.yaml", "label: The label is the law.", "label: Read the label.")]
    [InlineData("treatments.yaml", "cautions: [label]", "do: [Water it in.]\n    cautions: [label]")]
    [InlineData("treatments.yaml", "season: { from: 01-01, until: 07-31 }", "season: { until: 07-31, from: 01-01 }")]
    public void What_has_no_bearing_on_judging_changes_only_the_wide_fingerprint(string file, string before, string after)
    {
        (WatchConfiguration old, WatchConfiguration now) = Change(file, before, after);

        Assert.NotEqual(old.Fingerprint, now.Fingerprint);
        Assert.Equal(old.JudgingFingerprint, now.JudgingFingerprint);
    }

    [Theory]
    [InlineData("region.yaml", "latitude: 41.6", "latitude: 41.7")]
    [InlineData("region.yaml", "soil: silt loam", "soil: clay")]
    [InlineData("region.yaml", "soil: silt loam", "soil-temperature: measured")]
    [InlineData("region.yaml", "time-zone: America/Chicago", "time-zone: America/Denver")]
    [InlineData("region.yaml", "units: { temperature: °C", "units: { temperature: °F")]
    [InlineData("region.yaml", "csv: weather/one.csv", "csv: weather/one.csv\n        site-column: { name: station, value: ITH }")]
    [InlineData("treatments.yaml", "rises-above: 50 °F", "rises-above: 51 °F")]
    [InlineData("treatments.yaml", "until: 12-15", "until: 12-16")]
    [InlineData("treatments.yaml", "chance: 50 %", "chance: 40 %")]
    [InlineData("treatments.yaml", "method: single sine", "method: double sine")]
    public void What_judging_depends_on_changes_both(string file, string before, string after)
    {
        (WatchConfiguration old, WatchConfiguration now) = Change(file, before, after);

        Assert.NotEqual(old.Fingerprint, now.Fingerprint);
        Assert.NotEqual(old.JudgingFingerprint, now.JudgingFingerprint);
    }

    [Fact]
    public void The_name_of_a_station_column_has_a_bearing_though_the_name_of_a_site_has_none()
    {
        const string Column = "csv: weather/one.csv\n        site-column: { name: station, value: ITH }";
        using var first = new ConfigurationFolder(region: ConfigurationFolder.Region.Replace("csv: weather/one.csv", Column));
        using var second = new ConfigurationFolder(region: ConfigurationFolder.Region.Replace("csv: weather/one.csv", Column.Replace("station", "place")));

        Assert.NotEqual(first.Read().Configuration!.JudgingFingerprint, second.Read().Configuration!.JudgingFingerprint);
    }

    [Fact]
    public void The_fingerprint_is_the_published_SHA_256_of_lengths_and_bytes()
    {
        // FIPS 180-4: the hash of nothing begins with e3b0c442 (MEMORY); two empty files are sixteen bytes of zero.
        Assert.StartsWith("e3b0c442", Fingerprint.OfFiles());
        Assert.Equal(64, Fingerprint.OfFiles([], []).Length);
        Assert.NotEqual(Fingerprint.OfFiles([1], []), Fingerprint.OfFiles([], [1]));
    }

    private static (WatchConfiguration Old, WatchConfiguration Now) Change(string file, string before, string after)
    {
        using var folder = new ConfigurationFolder();
        WatchConfiguration old = folder.Read().Configuration!;
        folder.Replace(file, before, after);
        ConfigurationReading now = folder.Read();
        Assert.Empty(now.Faults);
        return (old, now.Configuration!);
    }
}
