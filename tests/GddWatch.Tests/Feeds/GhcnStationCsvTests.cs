using GddWatch.Agronomy.Weather;
using GddWatch.Feeds;
using GddWatch.Feeds.Faults;
using Xunit;
using static GddWatch.Tests.Feeds.GhcnLines;

namespace GddWatch.Tests.Feeds;

/// <summary>One station's CSV file of GHCN-Daily, in the layout of a line a day and in that of a line a value.</summary>
public sealed class GhcnStationCsvTests : IDisposable
{
    private const string Header =
        "\"STATION\",\"DATE\",\"LATITUDE\",\"LONGITUDE\",\"ELEVATION\",\"NAME\",\"PRCP\",\"PRCP_ATTRIBUTES\",\"TMAX\",\"TMAX_ATTRIBUTES\",\"TMIN\",\"TMIN_ATTRIBUTES\"";

    private readonly FeedFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task A_line_a_day_gives_its_values_in_the_units_of_the_record()
    {
        FeedReading reading = await ReadLinesAsync(Day("2024-04-01", 213, ",,W", 17), Day("2024-04-02", 220, ",,W,2400", -17));

        Assert.Empty(reading.Faults);
        Assert.Equal((21.3, 22.0, 1.7, -1.7), (reading.MaximumAt("2024-04-01"), reading.MaximumAt("2024-04-02"), reading.At("2024-04-01"), reading.At("2024-04-02")));
        Assert.Equal(2.5, reading.RainAt("2024-04-01"));
    }

    [Fact]
    public async Task A_maximum_with_a_morning_hour_goes_to_the_day_before_and_one_with_an_evening_hour_stays()
    {
        FeedReading reading = await ReadLinesAsync(
            Day("2024-04-01", 100, ",,7,1700", 10), Day("2024-04-02", 110, ",,7,1700", 20), Day("2024-04-03", 120, ",,7,0700", 30), Day("2024-04-04", 130, ",,7,0700", 40));

        Assert.Equal((10.0, 11.0, 13.0, null), (reading.MaximumAt("2024-04-01"), reading.MaximumAt("2024-04-02"), reading.MaximumAt("2024-04-03"), reading.MaximumAt("2024-04-04")));
        Assert.Equal((3.0, 4.0), (reading.At("2024-04-03"), reading.At("2024-04-04")));
        Fault fault = Assert.Single(reading.Faults);
        Assert.Equal((FaultSeverity.LeftOut, 4), (fault.Severity, fault.Line));
        Assert.Contains("The hour of reading changes here: Tue 2024-04-02", fault.Problem, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0059", false)]
    [InlineData("0100", true)]
    [InlineData("0700", true)]
    [InlineData("1200", true)]
    [InlineData("1201", false)]
    [InlineData("2400", false)]
    [InlineData("0000", false)]
    [InlineData("0777", false)]
    [InlineData("", false)]
    public async Task The_morning_is_from_one_to_noon(string time, bool isMorning)
    {
        FeedReading reading = await ReadLinesAsync(Day("2024-04-01", 100, $",,7,{time}", 10), Day("2024-04-02", 150, $",,7,{time}", 10));

        Assert.Equal(isMorning ? 15.0 : 10.0, reading.MaximumAt("2024-04-01"));
    }

    [Fact]
    public async Task A_quality_flag_keeps_a_value_out()
    {
        FeedReading reading = await ReadLinesAsync(Day("2024-04-01", 213, ",S,W", 17), Day("2024-04-02", 220, ",,W", 17));

        Assert.Equal((null, 1.7, 22.0), (reading.MaximumAt("2024-04-01"), reading.At("2024-04-01"), reading.MaximumAt("2024-04-02")));
        Assert.Contains("failed the check against neighbours (S)", Assert.Single(reading.Faults).Found, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_layout_of_a_line_a_value_is_read_too()
    {
        string text = $"ID,DATE,ELEMENT,DATA_VALUE,M_FLAG,Q_FLAG,S_FLAG,OBS_TIME\n{Station},20240402,TMIN,20,,,W,\n{Station},20240401,TMAX,213,,,W,2400\n{Station},20240401,TMIN,17,,,W\n";

        FeedReading reading = await ReadAsync(folder.With(text, "a.csv"), StationCsv());

        Assert.Empty(reading.Faults);
        Assert.Equal((21.3, 1.7, 2.0), (reading.MaximumAt("2024-04-01"), reading.At("2024-04-01"), reading.At("2024-04-02")));
    }

    [Fact]
    public async Task Degrees_with_decimals_are_refused_since_whole_ones_among_them_would_pass_for_tenths()
    {
        FeedReading reading = await ReadLinesAsync(Day("2024-04-01", 21, ",,W", 2), Day("2024-04-02", 22, ",,W", 3).Replace("\"22\"", "\"22.4\"", StringComparison.Ordinal));

        Assert.Null(reading.Series);
        Fault fault = Assert.Single(reading.Faults, each => each.Severity == FaultSeverity.Refused);
        Assert.Equal(3, fault.Line);
        Assert.Contains("not in tenths", fault.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_export_without_flags_is_refused_with_what_to_do()
    {
        FeedReading reading = await ReadAsync(folder.With("STATION,STATION_NAME,DATE,TMAX,TMIN\nGHCND:USC00999999,SOMEWHERE,20240401,14.4,3.3\n", "a.csv"), StationCsv());

        Fault fault = Assert.Single(reading.Faults);
        Assert.Contains("TMAX_ATTRIBUTES, TMIN_ATTRIBUTES", fault.Problem, StringComparison.Ordinal);
        Assert.Contains("read with csv:", fault.Accepted, StringComparison.Ordinal);
    }

    public static TheoryData<string, string> Spoiled => new()
    {
        { $"\"{Station}\",\"2024-04-02\",\"45\"", "3 fields where the header has 12" },
        { Day("2024-02-30", 100, ",,W", 1), "not a date" },
        { Day("2024-04-02", 100, ",,W", 1).Replace("\"100\"", "\"1OO\"", StringComparison.Ordinal), "not a whole number" },
        { Day("2024-04-02", 32_000, ",,W", 1), "outside everything" },
        { Day("2024-04-02", 100, ",,W", 1).Replace("\"100\"", "\"99999999999999999999\"", StringComparison.Ordinal), "not a whole number" },
        { Day("2024-04-02", 100, ",QQ,W", 1), "A flag has one character" },
        { Day("2024-04-02", 100, ",,W,0700,x", 1), "A flag has one character" },
        { "\"" + Station + "\",\"2024-04-02", "quotation marks" },
    };

    [Theory]
    [MemberData(nameof(Spoiled))]
    public async Task A_spoiled_line_is_told_with_its_place_and_the_others_are_kept(string line, string problem)
    {
        FeedReading reading = await ReadLinesAsync(Day("2024-04-01", 213, ",,W", 17), line, Day("2024-04-03", 220, ",,W", 17));

        Fault fault = reading.Faults.First(each => each.Severity == FaultSeverity.LeftOut);
        Assert.Equal(("a.csv", 3), (fault.File, fault.Line));
        Assert.Contains(problem, fault.Problem, StringComparison.Ordinal);
        Assert.Equal((21.3, 22.0), (reading.MaximumAt("2024-04-01"), reading.MaximumAt("2024-04-03")));
    }

    [Fact]
    public async Task A_station_far_away_and_one_that_moved_are_told()
    {
        FeedReading reading = await ReadLinesAsync(Day("2024-04-01", 213, ",,W", 17), Day("2024-04-02", 213, ",,W", 17, "44.9", "1.0", "350.0"));

        Assert.Equal(213 / 10.0, reading.MaximumAt("2024-04-02"));
        Fault moved = reading.Faults[0];
        Assert.Equal((FaultSeverity.Remark, 3), (moved.Severity, moved.Line));
        Assert.Contains("said to stand elsewhere", moved.Problem, StringComparison.Ordinal);
        Assert.Contains("350 m higher", moved.Problem, StringComparison.Ordinal);
        // 79.47 km by the spherical law of cosines on a sphere of 6371.0088 km (CALC); the code uses the haversine.
        Assert.Contains("The station lies 79 km from the site and 350 m higher than it", reading.Faults[1].Problem, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_code_for_an_unknown_place_is_no_place() =>
        Assert.Empty((await ReadLinesAsync(Day("2024-04-01", 213, ",,W", 17, "-9999", "-9999", "-999.9"))).Faults);

    private static string Day(string date, int maximum, string attributes, int minimum, string latitude = "45.0", string longitude = "0.0", string elevation = "0.0") =>
        $"\"{Station}\",\"{date}\",\"{latitude}\",\"{longitude}\",\"{elevation}\",\"SOMEWHERE, ZZ US\",\"   25\",\",,W\",\"{maximum}\",\"{attributes}\",\"{minimum}\",\",,W\"";

    private Task<FeedReading> ReadLinesAsync(params string[] lines) => ReadAsync(folder.With($"{Header}\n{string.Join('\n', lines)}\n", "a.csv"), StationCsv());
}
