using System.Globalization;
using GddWatch.Agronomy.Weather;
using GddWatch.Feeds;
using GddWatch.Feeds.Archives;
using GddWatch.Feeds.Faults;
using Xunit;

namespace GddWatch.Tests.Feeds;

/// <summary>The daily files of the US Climate Reference Network: real ones read another way, and spoiled lines.</summary>
public sealed class UscrnDailyArchiveTests : IDisposable
{
    // An invented day in the archive's columns.
    private const string Record =
        "99999 20240501  2.622    0.00   45.00    22.3     9.6    16.0    15.2     1.5    18.45 C    25.4     8.8    16.2    92.5    49.9    70.6   0.387   0.413   0.391   0.439   0.471    15.5    15.1    14.0    12.8    11.4";

    private readonly FeedFolder folder = new();

    public void Dispose() => folder.Dispose();

    // Source: NOAA NCEI, product CRND0103, 50 stations and 14 years, split at blanks here, cut at columns by the reader. Position of a field in the readme.txt of the product.
    [Fact]
    public async Task Every_value_of_every_real_file_agrees_with_splitting_the_lines_at_blanks()
    {
        string root = SharedFiles.Find("weather/uscrn-daily");
        (WeatherVariable Variable, int Field)[] fields =
        [
            (WeatherVariable.MaximumAirC, 6), (WeatherVariable.MinimumAirC, 7), (WeatherVariable.MeanAirC, 9), (WeatherVariable.PrecipitationMm, 10), (WeatherVariable.SolarRadiationMJ, 11),
            (WeatherVariable.RelativeHumidityPercent, 18), (WeatherVariable.Soil5CmC, 24), (WeatherVariable.Soil10CmC, 25),
        ];
        int files = 0;
        int values = 0;
        foreach (IGrouping<string, string> station in Directory.GetFiles(root, "CRND0103-*.txt", SearchOption.AllDirectories).GroupBy(path => Path.GetFileName(path)[14..]))
        {
            IndependentDays expected = new();
            foreach (string path in station)
            {
                files++;
                foreach (string line in await File.ReadAllLinesAsync(path, TestContext.Current.CancellationToken))
                {
                    string[] cells = line.Split(' ', StringSplitOptions.RemoveEmptyEntries);
                    DateOnly day = DateOnly.ParseExact(cells[1], "yyyyMMdd", CultureInfo.InvariantCulture);
                    expected.Put(day, fields.Select(each => (each.Variable, IndependentDays.Number(cells[each.Field - 1], "-9999.0", "-9999.00", "-99.000"))));
                }
            }

            expected.AssertSameAs(await ReadAsync($"*/CRND0103-*-{station.Key}", root));
            values += expected.Count;
        }

        Assert.True(files == 700 && values > 1_500_000, $"Only {files} files and {values} values were compared.");
    }

    [Fact]
    public async Task A_record_gives_the_eight_variables()
    {
        FeedReading reading = await folder.With(Record + "\n", "2024/CRND0103-2024-Some.txt").ReadAsync(Archive("2024/CRND0103-*.txt"));

        Assert.Empty(reading.Faults);
        WeatherVariable[] known = [.. Enum.GetValues<WeatherVariable>().Where(variable => reading.Series!.Has(variable))];
        Assert.Equal([9.6, 22.3, 15.2, 1.5, 18.45, 70.6, 15.5, 15.1], known.Select(variable => reading.At("2024-05-01", variable)!.Value));
    }

    [Fact]
    public async Task Codes_of_missing_values_are_missing()
    {
        string text = Record.Replace("    22.3", " -9999.0", StringComparison.Ordinal).Replace("   18.45", "-9999.00", StringComparison.Ordinal);

        FeedReading reading = await folder.With(text + "\r\n", "a.txt").ReadAsync(Archive("a.txt"));

        Assert.Empty(reading.Faults);
        Assert.Equal((9.6, null, null), (reading.At("2024-05-01"), reading.MaximumAt("2024-05-01"), reading.At("2024-05-01", WeatherVariable.SolarRadiationMJ)));
    }

    public static TheoryData<string, string> Spoiled => new()
    {
        { Record[..150], "fixed columns" },
        { "99999" + Record[6..], "fixed columns" },
        { Record + " 1.0", "fixed columns" },
        { Record.Replace("20240501", "20230229", StringComparison.Ordinal), "not a date" },
        { Record.Replace("20240501", "20250701", StringComparison.Ordinal), "still to come" },
        { Record.Replace("  22.3", " 2x2.3", StringComparison.Ordinal), "not a number" },
        { Record.Replace("  22.3", " 122.3", StringComparison.Ordinal), "outside everything" },
        { Record.Replace("  22.3", "   2.3", StringComparison.Ordinal), "minimum is above" },
        { "\0\u0001", "fixed columns" },
    };

    [Theory]
    [MemberData(nameof(Spoiled))]
    public async Task A_spoiled_line_is_told_with_its_place_and_the_others_are_kept(string line, string problem)
    {
        string text = $"{Record}\n{line}\n{Record.Replace("20240501", "20240503", StringComparison.Ordinal)}\n";
        FeedReading reading = await folder.With(text, "a.txt").ReadAsync(Archive("*.txt"));

        Fault fault = reading.Faults.First(each => each.Severity == FaultSeverity.LeftOut);
        Assert.Equal(("a.txt", 2), (fault.File, fault.Line));
        Assert.Contains(problem, fault.Problem, StringComparison.Ordinal);
        Assert.Equal((9.6, 9.6), (reading.At("2024-05-01"), reading.At("2024-05-03")));
    }

    [Fact]
    public async Task A_pattern_that_no_file_matches_is_refused()
    {
        folder.With(Record, "a.txt");

        Assert.All(
            await Task.WhenAll(folder.ReadAsync(Archive("b*.txt")), folder.ReadAsync(Archive("nowhere/*.txt")), folder.ReadAsync(Archive("?.txt")), folder.ReadAsync(Archive("a.txt/*"))),
            reading => Assert.Contains("No file matches", Assert.Single(reading.Faults).Problem, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_pattern_reaches_into_folders_and_leaves_other_files_alone()
    {
        folder.With(Record + "\n", "2024/CRND0103-2024-Some.txt")
            .With(Record.Replace("20240501", "20230501", StringComparison.Ordinal) + "\n", "2023/CRND0103-2023-Some.txt")
            .With(Record.Replace("20240501", "20220501", StringComparison.Ordinal) + "\n", "2022/CRND0103-2022-Some_Other.txt");

        FeedReading reading = await folder.ReadAsync(Archive("./20*/CRND0103-*-Some.txt"));

        Assert.Equal((new DateOnly(2023, 5, 1), new DateOnly(2024, 5, 1)), (reading.Series!.FirstDay, reading.Series.LastDay));
    }

    // 6840.59 km from Bedford, Indiana, to 45° N 0° E by the spherical law of cosines (CALC).
    [Fact]
    public async Task A_station_that_lies_far_from_the_site_is_told_and_one_that_moved_too()
    {
        string far = Record.Replace("   0.00   45.00", " -86.57   38.89", StringComparison.Ordinal).Replace("20240501", "20240502", StringComparison.Ordinal);

        FeedReading reading = await folder.With($"{Record}\n{far}\n", "a.txt").ReadAsync(Archive("a.txt"));

        Assert.All(reading.Faults, fault => Assert.Equal(FaultSeverity.Remark, fault.Severity));
        Assert.Equal(2, reading.Faults[0].Line);
        Assert.Contains("said to stand elsewhere: 6840.6 km away", reading.Faults[0].Problem, StringComparison.Ordinal);
        Assert.StartsWith("The station lies 6,841 km from the site.", reading.Faults[1].Problem, StringComparison.Ordinal);
        Assert.Equal(9.6, reading.At("2024-05-02"));
    }

    private static ArchiveFeedDefinition Archive(string files) => new(ArchiveKind.UscrnDaily, files);

    private Task<FeedReading> ReadAsync(string pattern, string root) =>
        FeedFactory.Create(Archive(pattern), root, folder.Clock).ReadAsync(FeedFolder.SiteAt(39), FeedFolder.Today, TestContext.Current.CancellationToken);
}
