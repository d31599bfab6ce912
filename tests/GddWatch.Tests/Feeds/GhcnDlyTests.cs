using GddWatch.Agronomy.Weather;
using GddWatch.Feeds;
using GddWatch.Feeds.Csv;
using GddWatch.Feeds.Faults;
using Xunit;
using static GddWatch.Tests.Feeds.GhcnLines;

namespace GddWatch.Tests.Feeds;

/// <summary>GHCN-Daily in fixed columns: real files read another way, flags, hours and spoiled lines.</summary>
public sealed class GhcnDlyTests : IDisposable
{
    private readonly FeedFolder folder = new();

    public void Dispose() => folder.Dispose();

    // Source: NOAA NCEI, GHCN-Daily; the columns are those of its readme.txt, section III (SEEN). Here each value is cut out by its own position; the reader goes through
    // groups, flags and days.
    [Theory]
    [InlineData("USW00094728", 55_000)]
    [InlineData("USW00094846", 21_000)]
    [InlineData("USC00368449", 3_500)]
    public async Task Every_value_of_real_files_agrees_with_cutting_it_out_by_position(string station, int leastDays)
    {
        string root = SharedFiles.Find("weather/ghcn-daily");
        FeedReading reading = await FeedFactory.Create(Dly($"{station}.dly", observedAt: ObservationTime.Midnight), root, folder.Clock)
            .ReadAsync(FeedFolder.SiteAt(40), FeedFolder.Today, TestContext.Current.CancellationToken);

        (string Element, WeatherVariable Variable, double Scale)[] elements =
        [
            ("TMAX", WeatherVariable.MaximumAirC, 10), ("TMIN", WeatherVariable.MinimumAirC, 10), ("TAVG", WeatherVariable.MeanAirC, 10),
            ("PRCP", WeatherVariable.PrecipitationMm, 10), ("SNWD", WeatherVariable.SnowDepthMm, 1),
        ];
        Dictionary<(string Day, WeatherVariable Variable), double> expected = [];
        foreach (string line in await File.ReadAllLinesAsync(Path.Combine(root, $"{station}.dly"), TestContext.Current.CancellationToken))
        {
            if (Array.Find(elements, each => each.Element == line[17..21]) is not { Element: { } code } element) continue;
            for (int day = 1; day <= 31; day++)
            {
                string value = line.Substring(21 + ((day - 1) * 8), 5);
                string flags = line.Substring(26 + ((day - 1) * 8), 3);
                bool isUsed = value != "-9999" && flags[1] == ' ' && !(flags[0] == 'P' && (code is "PRCP" or "SNWD")) && !(code == "TAVG" && flags[2] == 'S');
                if (isUsed) expected[($"{line[11..15]}-{line[15..17]}-{day:00}", element.Variable)] = int.Parse(value, System.Globalization.CultureInfo.InvariantCulture) / element.Scale;
            }
        }

        foreach (KeyValuePair<(string Day, WeatherVariable Variable), double> each in expected) Assert.Equal(each.Value, reading.At(each.Key.Day, each.Key.Variable));
        int known = 0;
        foreach ((_, WeatherVariable variable, _) in elements)
        {
            foreach (double value in reading.Series!.Column(variable)) known += double.IsNaN(value) ? 0 : 1;
        }

        Assert.Equal(expected.Count, known);
        Assert.True(expected.Keys.Count(each => each.Variable == WeatherVariable.MinimumAirC) > leastDays);
        Assert.DoesNotContain(reading.Faults, fault => fault.Severity == FaultSeverity.Refused);
    }

    // Source: quality flags counted in the file by awk: 2 of TMAX, 5 of TAVG and 4 of SNWD (CALC).
    [Fact]
    public async Task Values_that_failed_the_archives_quality_control_are_counted_and_not_used()
    {
        string root = SharedFiles.Find("weather/ghcn-daily");
        FeedReading reading = await FeedFactory.Create(Dly("USW00094728.dly"), root, folder.Clock).ReadAsync(FeedFolder.SiteAt(40), FeedFolder.Today, TestContext.Current.CancellationToken);

        Fault fault = Assert.Single(reading.Faults, each => each.Problem.Contains("quality control", StringComparison.Ordinal));
        Assert.Equal(FaultSeverity.Remark, fault.Severity);
        Assert.StartsWith("11 values failed", fault.Problem, StringComparison.Ordinal);
        Assert.Contains("2 of TMAX, 5 of TAVG, 4 of SNWD; the first is", fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Tenths_become_degrees_and_millimetres_and_snow_stays_whole()
    {
        string[] lines = [DlyLine("TMAX", 4, 213), DlyLine("TMIN", 4, -17), DlyLine("TAVG", 4, 98), DlyLine("PRCP", 4, 254), DlyLine("SNWD", 4, 30), DlyLine("SNOW", 4, 7), DlyLine("AWND", 4, 31)];

        FeedReading reading = await ReadAsync(folder.With(string.Join('\n', lines) + "\n", "a.dly"), Dly());

        Assert.Empty(reading.Faults);
        Assert.Equal(30, reading.Series!.Count);
        Assert.Equal((21.3, -1.7, 9.8), (reading.MaximumAt("2024-04-30"), reading.At("2024-04-30"), reading.At("2024-04-30", WeatherVariable.MeanAirC)));
        Assert.Equal((25.4, 30.0), (reading.RainAt("2024-04-01"), reading.At("2024-04-01", WeatherVariable.SnowDepthMm)));
        Assert.False(reading.Series.Has(WeatherVariable.WindMPerS));
    }

    [Theory]
    [InlineData("TMAX", " I0", "1 value failed the archive's own quality control", "failed the check of internal consistency (I)")]
    [InlineData("TMAX", "L 0", "1 value of temperature seem", "flag L")]
    [InlineData("PRCP", "P 0", "1 value of rain or snow were not measured", "flag P")]
    [InlineData("TAVG", "H S", "1 value of mean temperature", "source flag S")]
    public async Task A_value_whose_flags_forbid_its_use_is_missing_with_a_remark(string element, string flags, string problem, string found)
    {
        string[] lines = [DlyLine("TMAX", 4, 213), DlyLine("TMIN", 4, 17), DlyLine("PRCP", 4, 0), DlyLine("TAVG", 4, 98)];
        lines = [.. lines.Where(line => line[17..21] != element), DlyLine(element, 4, 111, other: (9, 112, flags))];

        FeedReading reading = await ReadAsync(folder.With(string.Join("\r\n", lines) + "\r\n", "a.dly"), Dly());

        Fault fault = Assert.Single(reading.Faults);
        Assert.Equal(FaultSeverity.Remark, fault.Severity);
        Assert.Contains(problem, fault.Problem, StringComparison.Ordinal);
        Assert.Contains(found, fault.Found, StringComparison.Ordinal);
        WeatherVariable variable = element switch { "TMAX" => WeatherVariable.MaximumAirC, "PRCP" => WeatherVariable.PrecipitationMm, _ => WeatherVariable.MeanAirC };
        Assert.Equal((11.1, null, 11.1), (reading.At("2024-04-08", variable), reading.At("2024-04-09", variable), reading.At("2024-04-10", variable)));
    }

    [Fact]
    public async Task A_trace_of_rain_is_no_rain_and_an_hourly_extreme_is_one()
    {
        string[] lines = [DlyLine("TMAX", 4, 213, other: (9, 201, "H 0")), DlyLine("TMIN", 4, 17), DlyLine("PRCP", 4, 5, other: (9, 0, "T 0"))];

        FeedReading reading = await ReadAsync(folder.With(string.Join('\n', lines), "a.dly"), Dly());

        Assert.Empty(reading.Faults);
        Assert.Equal((20.1, 0.0), (reading.MaximumAt("2024-04-09"), reading.RainAt("2024-04-09")));
    }

    [Fact]
    public async Task A_station_read_in_the_morning_gives_its_maximum_to_the_day_before()
    {
        string[] lines = [DlyLine("TMAX", 4, 213, other: (9, 250, "  0")), DlyLine("TMIN", 4, 17, other: (9, 30, "  0"))];

        FeedReading reading = await ReadAsync(folder.With(string.Join('\n', lines), "a.dly"), Dly(observedAt: ObservationTime.Morning));

        Assert.Equal((25.0, 21.3), (reading.MaximumAt("2024-04-08"), reading.MaximumAt("2024-04-09")));
        Assert.Equal((1.7, 3.0), (reading.At("2024-04-08"), reading.At("2024-04-09")));
        Assert.Equal((21.3, null), (reading.MaximumAt("2024-03-31"), reading.MaximumAt("2024-04-30")));
    }

    [Fact]
    public async Task A_co_operative_station_whose_hour_nobody_told_is_remarked_on()
    {
        string text = string.Join('\n', DlyLine("TMAX", 4, 213, "USC00999999"), DlyLine("TMIN", 4, 17, "USC00999999"));
        folder.With(text, "a.dly");

        Assert.Contains("do not say at what hour", Assert.Single((await ReadAsync(folder, Dly())).Faults).Problem, StringComparison.Ordinal);
        Assert.Empty((await ReadAsync(folder, Dly(observedAt: ObservationTime.Midnight))).Faults);
    }

    [Fact]
    public async Task Files_of_several_stations_need_the_stations_name()
    {
        folder.With(string.Join('\n', DlyLine("TMAX", 4, 213), DlyLine("TMIN", 4, 17)), "a.dly")
            .With(string.Join('\n', DlyLine("TMAX", 5, 250, "USW00088888"), DlyLine("TMIN", 5, 99, "USW00088888")), "b.dly");

        FeedReading unnamed = await ReadAsync(folder, Dly());
        FeedReading named = await ReadAsync(folder, Dly(station: "USW00088888"));
        FeedReading absent = await ReadAsync(folder, Dly(station: "USW00077777"));

        Assert.Null(unnamed.Series);
        Assert.Contains("several stations", Assert.Single(unnamed.Faults, fault => fault.Severity == FaultSeverity.Refused).Problem, StringComparison.Ordinal);
        Assert.Equal((9.9, null), (named.At("2024-05-01"), named.At("2024-04-01")));
        Assert.Null(absent.Series);
        Assert.Contains("such as USW00088888, USW00099999", absent.Faults[^1].Accepted, StringComparison.Ordinal);
    }

    public static TheoryData<string, string> Spoiled => new()
    {
        { DlyLine("TMAX", 4, 100)[..200], "not a record of GHCN-Daily: it is 200 bytes long" },
        { DlyLine("TMAX", 4, 100) + "  5", "not a record" },
        { "\0\u0001\u0002", "not a record" },
        { new string('x', 100_000), "not a record" },
        { DlyLine("TMAX", 4, 100).Replace("202404", "202413", StringComparison.Ordinal), "not a date" },
        { DlyLine("TMAX", 4, 100).Replace("202404", "02 404", StringComparison.Ordinal), "not a date" },
        { DlyLine("TMAX", 4, 100, other: (31, 100, "  0")), "has 30 days" },
        { DlyLine("TMAX", 4, 100).Replace("  100  0", " 1x00  0", StringComparison.Ordinal), "not a whole number" },
        { DlyLine("TMAX", 4, 100).Replace("  100  0", " 10.0  0", StringComparison.Ordinal), "not a whole number" },
        { DlyLine("TMAX", 4, 99_999), "outside everything" },
        { DlyLine("TMAX", 3, 33), "second time with another value" },
    };

    [Theory]
    [MemberData(nameof(Spoiled))]
    public async Task A_spoiled_line_is_told_with_its_place_and_the_others_are_kept(string line, string problem)
    {
        folder.With(string.Join('\n', DlyLine("TMAX", 3, 213), line, DlyLine("TMIN", 3, 17)) + "\n", "a.dly");

        FeedReading reading = await ReadAsync(folder, Dly());

        Fault fault = reading.Faults.First(each => each.Severity == FaultSeverity.LeftOut);
        Assert.Equal(("a.dly", 2), (fault.File, fault.Line));
        Assert.Contains(problem, fault.Problem, StringComparison.Ordinal);
        Assert.NotEmpty(fault.Accepted);
        Assert.Equal((1.7, 21.3), (reading.At("2024-03-31"), reading.MaximumAt("2024-03-31")));
    }

    [Fact]
    public async Task A_minimum_above_its_maximum_costs_both_and_leaves_the_rain()
    {
        string[] lines = [DlyLine("TMAX", 4, 100, other: (9, 10, "  0")), DlyLine("TMIN", 4, 17), DlyLine("PRCP", 4, 5)];

        FeedReading reading = await ReadAsync(folder.With(string.Join('\n', lines), "a.dly"), Dly());

        Assert.Contains("is above its maximum", Assert.Single(reading.Faults).Problem, StringComparison.Ordinal);
        Assert.Equal((null, null, 0.5), (reading.At("2024-04-09"), reading.MaximumAt("2024-04-09"), reading.RainAt("2024-04-09")));
    }

    [Fact]
    public async Task Blanks_cut_off_the_ends_of_lines_cost_nothing()
    {
        string text = string.Join('\n', DlyLine("TMAX", 4, 213).TrimEnd(), DlyLine("TMIN", 4, 17).TrimEnd());

        FeedReading reading = await ReadAsync(folder.With(text, "a.dly"), Dly());

        Assert.Empty(reading.Faults);
        Assert.Equal(21.3, reading.MaximumAt("2024-04-30"));
    }
}
