using GddWatch.Configuration;
using Xunit;

namespace GddWatch.Tests.Configuration;

/// <summary>A configuration in a folder of its own, where a test spoils something.</summary>
internal sealed class ConfigurationFolder : IDisposable
{
    /// <summary>A small region without a fault.</summary>
    public const string Region = """
        region:
          name: Small
          time-zone: America/Chicago
          units: us
        sites:
          - id: one
            name: Site One
            latitude: 41.6
            longitude: -93.3
            elevation: 250 m
            turf: [cool-season]
            soil: silt loam
            feeds:
              - csv: weather/one.csv
                columns: { date: date, minimum: low, maximum: high, precipitation: rain }
                units: { temperature: °C, precipitation: mm }
          - id: two
            name: Site Two
            latitude: 32.5
            longitude: -87.2
            elevation: 197 ft
            turf: [warm-season, cool-season]
            feeds:
              - archive: uscrn-daily
                files: weather/*/two.txt
        recipients:
          - address: adviser@example.org
            sites: all
            treatments: all
            together: true
          - address: crew@example.org
            sites: [one, two]
            treatments: [barrier, seeding]
            notices: [opened, closing]
        operator: { address: operator@example.org }
        rules:
          - { kind: feeding, from: 11-15, until: 03-01, sites: [one], source: invented, reviewed: 2026-10-01 }

        """;

    /// <summary>Two small treatments without a fault.</summary>
    public const string Treatments = """
        cautions:
          label: The label is the law.
        treatments:
          - id: barrier
            name: Barrier
            turf: [cool-season, warm-season]
            season: { from: 01-01, until: 07-31 }
            opens:
              all:
                - soil-temperature:
                    depth: 5 cm
                    mean-over: 5 days
                    rises-above: 50 °F
                    held: 3 of 5 days
                    where-already-so: { days-before-usual: 28 days, usual: 55 °F, fallback: 02-15, within: 31 days }
                - calendar: { not-before: 01-05 }
            closed:
              heat-sum: { reaches: 78 °C-days, base: 12 °C, method: simple average, from: 01-01, soil-depth: 1 in }
            excludes:
              - { treatment: seeding, choice: One of the two., not-recorded: Nothing is recorded., held: { longest: 120 days, mowings: 3 } }
            cautions: [label]
          - id: seeding
            name: Seeding
            turf: [cool-season]
            season: { from: 08-10, until: 12-15 }
            opens:
              soil-temperature: { depth: 2 in, mean-over: 5 days, falls-below: 75 F, held: 2 days }
            closing:
              days-before-first-freeze: { at-most: 45 days, chance: 50 %, fallback: 10-15 }
            closed:
              any:
                - heat-sum: { reaches: 2000 F-days, base: 50 °F, upper: 86 °F, cutoff: horizontal, method: single sine, from: 03-01 }
                - not:
                    soil-temperature: { depth: 5 cm, mean-over: 1 day, rises-above: 4 °C, held: 1 day }
            excludes:
              - { treatment: barrier, choice: One of the two., not-recorded: Nothing is recorded., held: { longest: 365 days, label-date-decides: true } }

        """;

    private readonly DirectoryInfo home = Directory.CreateTempSubdirectory("gddwatch-config-");

    /// <summary>The small configuration, or the given texts in its place.</summary>
    public ConfigurationFolder(string region = Region, string treatments = Treatments)
    {
        Directory.CreateDirectory(Path);
        Write("region.yaml", region);
        Write("treatments.yaml", treatments);
    }

    public string Path => System.IO.Path.Combine(home.FullName, "config");

    public string PathOf(string file) => System.IO.Path.Combine(Path, file);

    public string TextOf(string file) => File.ReadAllText(PathOf(file));

    public void Write(string file, string text) => File.WriteAllText(PathOf(file), text);

    /// <summary>Replaces a text in a file, which must stand there once.</summary>
    public void Replace(string file, string good, string bad)
    {
        string text = TextOf(file);
        int start = text.IndexOf(good, StringComparison.Ordinal);
        Assert.True(start >= 0 && text.IndexOf(good, start + 1, StringComparison.Ordinal) < 0, $"\"{good}\" does not stand in {file} exactly once.");
        Write(file, text[..start] + bad + text[(start + good.Length)..]);
    }

    public ConfigurationReading Read() => ConfigurationReader.Read(Path);

    public void Dispose() => home.Delete(recursive: true);
}
