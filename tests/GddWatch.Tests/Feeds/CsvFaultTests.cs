using System.Text;
using GddWatch.Feeds;
using GddWatch.Feeds.Csv;
using GddWatch.Feeds.Faults;
using Xunit;

namespace GddWatch.Tests.Feeds;

/// <summary>Bad files: each is told with its place, what was found and what is accepted, and costs no good line.</summary>
public sealed class CsvFaultTests : IDisposable
{
    private const string Good = "2024-05-01,1,11,0";
    private const string AlsoGood = "2024-05-03,3,13,0";

    private readonly FeedFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task A_missing_file_is_refused() => Refused(await folder.ReadAsync(), "days.csv", "no such file");

    [Fact]
    public async Task A_missing_folder_is_refused()
    {
        Refused(await folder.ReadAsync(FeedFolder.Csv("nowhere/")), "nowhere/", "no such folder");
        Refused(await folder.ReadAsync(FeedFolder.Csv("nowhere/days.csv")), "nowhere/days.csv", "folder it should be in does not exist");
    }

    [Fact]
    public async Task A_folder_without_CSV_files_or_in_place_of_a_file_is_refused()
    {
        Directory.CreateDirectory(Path.Combine(folder.Root, "days.csv"));

        Refused(await folder.ReadAsync(FeedFolder.Csv("days.csv/")), "days.csv/", "no file whose name ends in .csv");
        Refused(await folder.ReadAsync(), "days.csv", "is a folder");
    }

    [Theory]
    [InlineData("")]
    [InlineData("\uFEFF")]
    [InlineData("\n\n \r\n")]
    [InlineData("# only a comment\n")]
    public async Task An_empty_file_is_refused(string text) => Refused(await folder.With(text).ReadAsync(), "days.csv", "is empty");

    [Fact]
    public async Task A_header_without_days_is_refused() => Refused(await folder.With("date,tmin,tmax,rain\n").ReadAsync(), "days.csv", "header line but no day");

    [Fact]
    public async Task Wrong_columns_are_all_told_with_the_names_that_are_there_and_the_nearest()
    {
        FeedReading reading = await folder.With("# x\ndate,t_min,tmaxx,precip\n2024-05-01,1,11,0\n").ReadAsync();

        Assert.True(reading.IsRefused);
        Assert.Equal(["tmin", "tmax", "rain"], reading.Faults.Select(fault => fault.Column));
        Assert.All(reading.Faults, fault => Assert.Equal((2, "days.csv"), (fault.Line, fault.File)));
        Assert.All(reading.Faults, fault => Assert.Contains("date, t_min, tmaxx, precip", fault.Accepted, StringComparison.Ordinal));
        Assert.StartsWith("perhaps \"t_min\"", reading.Faults[0].Accepted, StringComparison.Ordinal);
        Assert.StartsWith("perhaps \"tmaxx\"", reading.Faults[1].Accepted, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_header_with_another_separator_is_told_as_such()
    {
        FeedReading reading = await folder.With("date;tmin;tmax;rain\n2024-05-01;1;11;0\n").ReadAsync();

        Assert.Contains("separator is probably \";\"", reading.Faults[0].Accepted, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_column_that_is_there_twice_is_refused()
    {
        FeedReading reading = await folder.With("date,tmin,tmin,tmax,rain\n2024-05-01,1,1,11,0\n").ReadAsync();

        Refused(reading, "days.csv", "2 times, in fields 2, 3");
    }

    [Theory]
    [InlineData('"')]
    [InlineData('\n')]
    [InlineData('#')]
    [InlineData('é')]
    public async Task A_separator_that_cannot_separate_is_refused(char separator) =>
        Refused(await folder.With($"date,tmin,tmax,rain\n{Good}\n").ReadAsync(FeedFolder.Csv() with { Separator = separator }), "days.csv", "cannot be split");

    public static TheoryData<string, string?, string, string> BadRows => new()
    {
        { "2024-05-02,abc,12,0", "tmin", "abc", "not a number" },
        { "2024-05-02,2,1O,0", "tmax", "1O", "not a number" },
        { "2024-05-02,2,NaN,0", "tmax", "NaN", "not a number" },
        { "2024-05-02,2,Infinity,0", "tmax", "Infinity", "not a number" },
        { "2024-05-02,2,1e999,0", "tmax", "1e999", "not a number" },
        { "2024-05-02,2,\"12,5\",0", "tmax", "12,5", "decimal point" },
        { "2024-05-02,2,\"1,200.5\",0", "tmax", "1,200.5", "decimal point" },
        { "2024-05-02,22,12,0", "tmin and tmax", "22 and 12", "minimum is above the maximum" },
        { "2024-05-02,-89.5,12,0", "tmin", "-89.5", "outside everything" },
        { "2024-05-02,2,57.8,0", "tmax", "57.8", "outside everything" },
        { "2024-05-02,-9999,12,0", "tmin", "-9999", "outside everything" },
        { "2024-05-32,2,12,0", "date", "2024-05-32", "not a date" },
        { "02.05.2024,2,12,0", "date", "02.05.2024", "not a date" },
        { ",2,12,0", "date", "", "not a date" },
        { "2023-02-29,2,12,0", "date", "2023-02-29", "February 2023 has 28 days" },
        { "2025-07-01,2,12,0", "date", "2025-07-01", "still to come" },
        { "2925-07-01,2,12,0", "date", "2925-07-01", "still to come" },
        { "0024-05-02,2,12,0", "date", "0024-05-02", "before daily temperatures" },
        { "2024-05-02,2,12", null, "2024-05-02,2,12", "3 fields where the header has 4" },
        { "2024-05-02,2,12,0,1", null, "2024-05-02,2,12,0,1", "5 fields where the header has 4" },
        { "2024-05-02,1,5,11,8", null, "2024-05-02,1,5,11,8", "5 fields where the header has 4" },
        { "2024-05-02,\"2,12,0", null, "2024-05-02,\"2,12,0", "do not pair up" },
        { "2024-05-02,2\",12,0", null, "2024-05-02,2\",12,0", "do not pair up" },
        { "2024-05-02,\"2\"x,12,0", null, "2024-05-02,\"2\"x,12,0", "do not pair up" },
        { "\0\u0001\u0002", null, "\0\u0001\u0002", "1 field where the header has 4" },
    };

    [Theory]
    [MemberData(nameof(BadRows))]
    public async Task A_bad_line_is_told_with_its_place_and_the_others_are_kept(string row, string? column, string found, string problem)
    {
        FeedReading reading = await folder.ReadLinesAsync(Good, row, AlsoGood);

        Fault fault = reading.Telling().First(each => each.Severity == FaultSeverity.LeftOut);
        Assert.Equal(("days.csv", 3, column, found), (fault.File, fault.Line, fault.Column, fault.Found));
        Assert.Contains(problem, fault.Problem, StringComparison.Ordinal);
        Assert.NotEmpty(fault.Accepted);
        Assert.Null(reading.At("2024-05-02"));
        Assert.Equal((1.0, 11.0, 3.0, 13.0), (reading.At("2024-05-01"), reading.MaximumAt("2024-05-01"), reading.At("2024-05-03"), reading.MaximumAt("2024-05-03")));
        Assert.False(reading.IsRefused);
    }

    [Theory]
    [InlineData("x")]
    [InlineData("-1")]
    [InlineData("9999")]
    public async Task A_bad_value_of_an_optional_variable_costs_only_itself(string rain)
    {
        FeedReading reading = await folder.ReadLinesAsync(Good, $"2024-05-02,2,12,{rain}");

        Fault fault = reading.OnlyFault();
        Assert.Equal((3, "rain", rain), (fault.Line, fault.Column, fault.Found));
        Assert.Equal((2.0, 12.0, null), (reading.At("2024-05-02"), reading.MaximumAt("2024-05-02"), reading.RainAt("2024-05-02")));
    }

    [Fact]
    public async Task Every_bad_cell_of_a_line_is_told()
    {
        FeedReading reading = await folder.ReadLinesAsync(Good, "2024-05-02,a,b,c");

        Assert.Equal(["tmin", "tmax", "rain"], reading.Telling().Select(fault => fault.Column));
    }

    [Fact]
    public async Task An_empty_value_that_is_not_listed_as_missing_is_told()
    {
        FeedReading reading = await folder.With($"date,tmin,tmax,rain\n{Good}\n2024-05-02,,12,0\n").ReadAsync(FeedFolder.Csv() with { Missing = ["NA"] });

        Assert.Contains("not listed as missing", reading.OnlyFault().Problem, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_29th_of_February_of_a_leap_year_is_a_day() =>
        Assert.Equal(2.0, (await folder.ReadLinesAsync("2024-02-28,1,11,0", "2024-02-29,2,12,0", "2024-03-01,3,13,0")).At("2024-02-29"));

    [Theory]
    [InlineData("yyyy-mm-dd")]
    [InlineData("yyyy-MM")]
    [InlineData("MM-dd")]
    [InlineData("%")]
    [InlineData("")]
    public async Task A_date_format_that_does_not_hold_a_date_is_refused(string format) =>
        Refused(await folder.With($"date,tmin,tmax,rain\n{Good}\n").ReadAsync(FeedFolder.Csv() with { DateFormat = format }), "days.csv", "does not hold a year, a month and a day");

    [Fact]
    public async Task The_same_line_twice_is_a_remark()
    {
        Fault fault = (await folder.ReadLinesAsync(Good, "2024-05-02,2,12,0", Good.Replace(",11,", ",11.0,", StringComparison.Ordinal), "2024-05-03,3,13,0")).Faults
            .Single(each => each.Problem.Contains("second time", StringComparison.Ordinal));

        Assert.Equal((FaultSeverity.Remark, 4), (fault.Severity, fault.Line));
        Assert.Contains("first on line 2", fault.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_day_that_is_there_twice_with_other_values_keeps_the_first()
    {
        FeedReading reading = await folder.ReadLinesAsync(Good, "2024-05-01,2,12,0");

        Assert.Equal((FaultSeverity.LeftOut, 3), (reading.OnlyFault().Severity, reading.OnlyFault().Line));
        Assert.Equal((1.0, 11.0), (reading.At("2024-05-01"), reading.MaximumAt("2024-05-01")));
    }

    [Fact]
    public async Task Days_out_of_order_are_used_and_remarked_once()
    {
        FeedReading reading = await folder.ReadLinesAsync("2024-05-03,3,13,0", "2024-05-02,2,12,0", "2024-05-01,1,11,0");

        Fault fault = reading.OnlyFault();
        Assert.Equal((FaultSeverity.Remark, 3), (fault.Severity, fault.Line));
        Assert.Contains("Thu 2024-05-02 comes after Fri 2024-05-03, and 1 more line goes back", fault.Problem, StringComparison.Ordinal);
        Assert.Equal((1.0, 2.0, 3.0), (reading.At("2024-05-01"), reading.At("2024-05-02"), reading.At("2024-05-03")));
    }

    [Fact]
    public async Task A_gap_is_remarked_with_its_first_and_last_day_and_length()
    {
        FeedReading reading = await folder.ReadLinesAsync("2024-02-27,1,11,0", "2024-03-02,2,12,0", "2024-03-04,3,13,0");

        Assert.Equal(
            [(FaultSeverity.Remark, 3, "3 days are missing before this line: Wed 2024-02-28 to Fri 2024-03-01."), (FaultSeverity.Remark, 4, "One day is missing before this line: Sun 2024-03-03.")],
            reading.Telling().Select(fault => (fault.Severity, fault.Line!.Value, fault.Problem)));
        Assert.Equal(7, reading.Series!.Count);
        Assert.Null(reading.At("2024-02-29"));
    }

    [Fact]
    public async Task A_very_long_line_is_left_out()
    {
        FeedReading reading = await folder.ReadLinesAsync(Good, "2024-05-02,2,12," + new string('7', 3_000_000), AlsoGood);

        Fault fault = reading.Telling().First();
        Assert.Equal(3, fault.Line);
        Assert.True(fault.ToString().Length < 500, "The fault repeats the long line.");
        Assert.Equal((1.0, null, 3.0), (reading.At("2024-05-01"), reading.At("2024-05-02"), reading.At("2024-05-03")));
    }

    [Fact]
    public async Task A_file_that_is_no_text_is_refused() =>
        Refused(await folder.With([0x50, 0x4B, 3, 4, 0, 0, 0, 8, 0, 0x2C, 0x0A, 0xFF]).ReadAsync(), "days.csv", "not text");

    [Fact]
    public async Task Letters_of_an_old_encoding_in_other_columns_do_not_matter()
    {
        byte[] text = Encoding.Latin1.GetBytes("date,tmin,tmax,rain,Größe °C\n2024-05-01,1,11,0,größer\n2024-05-02,é,12,0,x\n");
        FeedReading reading = await folder.With(text).ReadAsync();

        Assert.Equal((1.0, null), (reading.At("2024-05-01"), reading.At("2024-05-02")));
        Assert.Equal((3, "tmin"), (reading.OnlyFault().Line, reading.OnlyFault().Column));
    }

    [Fact]
    public async Task A_flood_of_one_fault_is_cut_after_twenty_and_counted()
    {
        string[] bad = [.. Enumerable.Range(0, 500).Select(i => $"2024-05-02,x{i},12,0")];
        FeedReading reading = await folder.ReadLinesAsync([Good, .. bad, "2024-05-03,4,2,0"]);

        Fault[] numbers = [.. reading.Faults.Where(fault => fault.Column == "tmin")];
        Assert.Equal(21, numbers.Length);
        Assert.Equal(("x499", 502), (numbers[20].Found, numbers[20].Line));
        Assert.StartsWith("480 more of this kind", numbers[20].Problem, StringComparison.Ordinal);
        Assert.Contains(reading.Faults, fault => fault.Problem.StartsWith("The minimum is above", StringComparison.Ordinal));
    }

    [Fact]
    public async Task One_bad_file_of_a_folder_is_left_out_and_the_others_are_used()
    {
        FeedReading reading = await folder
            .With("day,low\n1,2\n", "years/a.csv")
            .With($"date,tmin,tmax,rain\n{Good}\n", "years/b.csv")
            .With("", "years/c.csv")
            .ReadAsync(FeedFolder.Csv("years/"));

        Assert.False(reading.IsRefused);
        Assert.Equal(1.0, reading.At("2024-05-01"));
        Assert.Equal(["years/a.csv", "years/a.csv", "years/a.csv", "years/a.csv", "years/c.csv"], reading.Telling().Select(fault => fault.File));
    }

    [Fact]
    public async Task A_site_that_the_file_does_not_know_is_told_with_those_that_it_knows()
    {
        FeedReading reading = await folder.With("station,date,tmin,tmax,rain\nABC,2024-05-01,1,2,3\n").ReadAsync(FeedFolder.Csv() with { SiteColumn = ("station", "ITH") });

        Assert.Contains("\"ABC\"", Assert.Single(reading.Faults).Accepted, StringComparison.Ordinal);
        Assert.True(reading.IsRefused);
    }

    private static void Refused(FeedReading reading, string file, string problem)
    {
        Fault fault = Assert.Single(reading.Faults);
        Assert.Equal((FaultSeverity.Refused, file), (fault.Severity, fault.File));
        Assert.Contains(problem, fault.Problem, StringComparison.Ordinal);
        Assert.NotEmpty(fault.Accepted);
        Assert.Null(reading.Series);
    }
}
