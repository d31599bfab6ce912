using System.Text;
using GddWatch.Agronomy.Weather;
using GddWatch.Feeds;
using GddWatch.Feeds.Csv;
using Xunit;

namespace GddWatch.Tests.Feeds;

/// <summary>Good files of every kind that the configuration can describe.</summary>
public sealed class CsvFeedTests : IDisposable
{
    private readonly FeedFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task A_plain_file_gives_its_values_and_no_fault()
    {
        FeedReading reading = await folder.ReadLinesAsync("2024-02-28,-1.5,8,0.2", "2024-02-29,0,9.25,", "2024-03-01,NA,NA,4");

        Assert.Empty(reading.Telling());
        Assert.Equal((new DateOnly(2024, 2, 28), 3), (reading.Series!.FirstDay, reading.Series.Count));
        Assert.Equal((-1.5, 8.0, 0.2), (reading.At("2024-02-28"), reading.MaximumAt("2024-02-28"), reading.RainAt("2024-02-28")));
        Assert.Equal((0.0, 9.25, null), (reading.At("2024-02-29"), reading.MaximumAt("2024-02-29"), reading.RainAt("2024-02-29")));
        Assert.Equal((null, null, 4.0), (reading.At("2024-03-01"), reading.MaximumAt("2024-03-01"), reading.RainAt("2024-03-01")));
    }

    // CALC: 50 °F = 10 °C, 14 °F = −10 °C; 1 inch = 25.4 mm by definition.
    [Theory]
    [InlineData(FileLengthUnit.Inch, 25.4)]
    [InlineData(FileLengthUnit.Centimetre, 10.0)]
    [InlineData(FileLengthUnit.Millimetre, 1.0)]
    public async Task Fahrenheit_inches_and_centimetres_become_metric(FileLengthUnit unit, double rainMm)
    {
        FeedReading reading = await folder.With("date,tmin,tmax,rain\n2024-01-01,14,50,1\n")
            .ReadAsync(FeedFolder.Csv() with { TemperatureUnit = FileTemperatureUnit.Fahrenheit, PrecipitationUnit = unit });

        Assert.Equal(-10.0, reading.At("2024-01-01")!.Value, 12);
        Assert.Equal(10.0, reading.MaximumAt("2024-01-01")!.Value, 12);
        Assert.Equal(rainMm, reading.RainAt("2024-01-01")!.Value, 12);
    }

    [Fact]
    public async Task Every_variable_can_have_a_column_in_any_order_and_other_columns_do_not_matter()
    {
        Dictionary<WeatherVariable, string> columns = Enum.GetValues<WeatherVariable>().ToDictionary(variable => variable, variable => $"c{(int)variable}");
        FeedReading reading = await folder.With("c9,c8,c7,c6,c5,c4,note,c3,c2,c1,c0,date\n12,11,3.5,60,18,100,\"dry, windy\",2,7,15,1,2024-05-01\n")
            .ReadAsync(FeedFolder.Csv() with { Columns = columns });

        Assert.Empty(reading.Telling());
        Assert.Equal([1, 15, 7, 2, 100, 18, 60, 3.5, 11, 12], Enum.GetValues<WeatherVariable>().Select(variable => reading.At("2024-05-01", variable)!.Value));
    }

    [Fact]
    public async Task Read_in_the_morning_a_maximum_goes_to_the_day_before_and_the_rest_stays()
    {
        FeedReading reading = await folder.With("date,tmin,tmax,rain\n2024-05-01,1,11,1\n2024-05-02,2,12,2\n2024-05-05,5,15,5\n")
            .ReadAsync(FeedFolder.Csv() with { ObservedAt = ObservationTime.Morning });

        Assert.Equal([null, 1, 2, null, null, 5], Days("04-30", "05-01", "05-02", "05-03", "05-04", "05-05").Select(day => reading.At(day)));
        Assert.Equal([11, 12, null, null, 15, null], Days("04-30", "05-01", "05-02", "05-03", "05-04", "05-05").Select(day => reading.MaximumAt(day)));
        Assert.Equal([null, 1, 2, null, null, 5], Days("04-30", "05-01", "05-02", "05-03", "05-04", "05-05").Select(day => reading.RainAt(day)));
    }

    [Fact]
    public async Task A_shifted_maximum_below_the_minimum_of_its_day_leaves_both_out()
    {
        FeedReading reading = await folder.With("date,tmin,tmax,rain\n2024-05-01,10,20,1\n2024-05-02,1,8,2\n")
            .ReadAsync(FeedFolder.Csv() with { ObservedAt = ObservationTime.Morning });

        Assert.Contains("10 °C and 8 °C", reading.OnlyFault().Found!, StringComparison.Ordinal);
        Assert.Equal((null, null, 1.0), (reading.At("2024-05-01"), reading.MaximumAt("2024-05-01"), reading.RainAt("2024-05-01")));
        Assert.Equal((20.0, 1.0), (reading.MaximumAt("2024-04-30"), reading.At("2024-05-02")));
    }

    [Fact]
    public async Task Of_a_file_of_several_sites_only_the_own_rows_are_read()
    {
        FeedReading reading = await folder.With("station,date,tmin,tmax,rain\nABC,2024-05-01,1,2,3\nITH,2024-05-01,4,5,6\nABC,2024-05-02,bad,2,3\n")
            .ReadAsync(FeedFolder.Csv() with { SiteColumn = ("station", "ITH") });

        Assert.Empty(reading.Telling());
        Assert.Equal((4.0, 1), (reading.At("2024-05-01"), reading.Series!.Count));
    }

    [Fact]
    public async Task A_folder_is_read_in_the_order_of_names_and_other_files_are_left_alone()
    {
        FeedReading reading = await folder
            .With("date,tmin,tmax,rain\n2024-05-02,2,12,0\n", "years/b.csv")
            .With("date,tmin,tmax,rain\n2024-05-01,1,11,0\n2024-05-02,9,12,0\n", "years/a.csv")
            .With("no weather", "years/notes.txt")
            .ReadAsync(FeedFolder.Csv("years/"));

        Assert.Equal((1.0, 9.0), (reading.At("2024-05-01"), reading.At("2024-05-02")));
        Assert.Equal("years/b.csv", reading.OnlyFault().File);
    }

    public static TheoryData<string, string> Spellings => new()
    {
        { "Windows line ends", "date,tmin,tmax,rain\r\n2024-05-01,1,11,0\r\n2024-05-02,2,12,0\r\n" },
        { "mixed line ends", "date,tmin,tmax,rain\r2024-05-01,1,11,0\r\n2024-05-02,2,12,0\n" },
        { "no last line end", "date,tmin,tmax,rain\n2024-05-01,1,11,0\n2024-05-02,2,12,0" },
        { "empty lines and comments", "# about\n\ndate,tmin,tmax,rain\n# a \"note\n2024-05-01,1,11,0\n\n\n2024-05-02,2,12,0\n" },
        { "blanks", " date , tmin,tmax ,rain\n2024-05-01 , 1,11\t,0\n2024-05-02,2,12,0\n" },
        { "quotes", "\"date\",\"tmin\",\"tmax\",\"rain\"\n\"2024-05-01\",\"1\",11,0\n2024-05-02,2,\"12\",0\n" },
        { "byte order mark", "\uFEFFdate,tmin,tmax,rain\n2024-05-01,1,11,0\n2024-05-02,2,12,0\n" },
        { "plus signs and exponents", "date,tmin,tmax,rain\n2024-05-01,+1,1.1e1,0\n2024-05-02,2.0,12.,0\n" },
    };

    [Theory]
    [MemberData(nameof(Spellings))]
    public async Task The_same_days_in_another_spelling_are_the_same_days(string spelling, string text)
    {
        FeedReading reading = await folder.With(text).ReadAsync();

        Assert.True(!reading.Telling().Any(), $"{spelling}: {string.Join("; ", reading.Telling())}");
        Assert.Equal((1.0, 2.0, 11.0, 12.0), (reading.At("2024-05-01"), reading.At("2024-05-02"), reading.MaximumAt("2024-05-01"), reading.MaximumAt("2024-05-02")));
    }

    [Theory]
    [InlineData("utf-16")]
    [InlineData("utf-16BE")]
    public async Task A_file_in_UTF_16_with_its_mark_is_read(string encoding)
    {
        var chosen = Encoding.GetEncoding(encoding);
        FeedReading reading = await folder.With([.. chosen.GetPreamble(), .. chosen.GetBytes("date,tmin,tmax,rain\n2024-05-01,1,11,0\n")]).ReadAsync();

        Assert.Equal(1.0, reading.At("2024-05-01"));
    }

    [Theory]
    [InlineData(';')]
    [InlineData('\t')]
    [InlineData('|')]
    public async Task Another_separator_can_be_configured(char separator)
    {
        FeedReading reading = await folder.With("date,tmin,tmax,rain\n2024-05-01,1, ,0\n".Replace(',', separator)).ReadAsync(FeedFolder.Csv() with { Separator = separator });

        Assert.Empty(reading.Telling());
        Assert.Equal((1.0, null, 0.0), (reading.At("2024-05-01"), reading.MaximumAt("2024-05-01"), reading.RainAt("2024-05-01")));
    }

    [Theory]
    [InlineData("dd.MM.yyyy", "01.05.2024")]
    [InlineData("M/d/yyyy", "5/1/2024")]
    [InlineData("dd-MMM-yy", "01-May-24")]
    [InlineData("yyyyMMdd", "20240501")]
    [InlineData("yyyy-MM-dd HH:mm", "2024-05-01 23:59")]
    public async Task Another_form_of_date_can_be_configured(string format, string date)
    {
        FeedReading reading = await folder.With($"date,tmin,tmax,rain\n{date},1,11,0\n").ReadAsync(FeedFolder.Csv() with { DateFormat = format });

        Assert.Equal(1.0, reading.At("2024-05-01"));
    }

    [Fact]
    public async Task A_year_of_two_digits_is_never_in_the_future()
    {
        FeedReading reading = await folder.With("date,tmin,tmax,rain\n01-Jan-42,1,11,0\n01-Jan-25,2,12,0\n").ReadAsync(FeedFolder.Csv() with { DateFormat = "dd-MMM-yy" });

        Assert.Equal((1.0, 2.0), (reading.At("1942-01-01"), reading.At("2025-01-01")));
    }

    [Fact]
    public async Task A_comment_can_begin_with_several_characters()
    {
        FeedReading reading = await folder.With("// a, \"b\ndate,tmin,tmax,rain\n//2024-05-01,7,11,0\n2024-05-01,1,11,0\n").ReadAsync(FeedFolder.Csv() with { Comment = "//" });

        Assert.Empty(reading.Telling());
        Assert.Equal(1.0, reading.At("2024-05-01"));
    }

    [Theory]
    [InlineData("harbor-lawn", 32.4)]
    [InlineData("mill-green", 38.5)]
    [InlineData("north-common", 41.6)]
    [InlineData("pecan-court", 33.0)]
    [InlineData("quarry-park", 41.9)]
    public async Task The_sample_files_are_read_whole_and_without_a_fault(string id, double latitude)
    {
        CsvFeedDefinition definition = FeedFolder.Csv($"data-samples/{id}.csv") with
        {
            Columns = new Dictionary<WeatherVariable, string> { [WeatherVariable.MinimumAirC] = "tmin_c", [WeatherVariable.MaximumAirC] = "tmax_c", [WeatherVariable.PrecipitationMm] = "rain_mm" },
        };
        string[] lines = await File.ReadAllLinesAsync(Path.Combine(SharedFiles.RepositoryRoot, definition.Path), TestContext.Current.CancellationToken);
        FeedReading reading = await new CsvFeed(definition, SharedFiles.RepositoryRoot, folder.Clock)
            .ReadAsync(FeedFolder.SiteAt(latitude), new DateOnly(2100, 1, 1), TestContext.Current.CancellationToken);

        Assert.Empty(reading.Faults);
        Assert.Equal(lines.Count(line => char.IsAsciiDigit(line[0])), reading.Series!.Count);
        string[] last = lines[^1].Split(',');
        Assert.Equal((double.Parse(last[1]), double.Parse(last[2]), double.Parse(last[3])), (reading.At(last[0]), reading.MaximumAt(last[0]), reading.RainAt(last[0])));
    }

    private static IEnumerable<string> Days(params string[] days) => days.Select(day => $"2024-{day}");
}
