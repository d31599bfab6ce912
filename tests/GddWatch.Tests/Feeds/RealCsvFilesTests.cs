using System.Globalization;
using GddWatch.Agronomy.Weather;
using GddWatch.Configuration;
using GddWatch.Feeds;
using GddWatch.Feeds.Csv;
using GddWatch.Feeds.Faults;
using GddWatch.Tests.Configuration;
using Xunit;

namespace GddWatch.Tests.Feeds;

/// <summary>
/// Every real daily table beside the repository, read as an adviser would configure it and read again here by splitting its lines at the separator: each value must be
/// the same. What each publisher's columns mean stands in the ORIGIN.md beside its files (SEEN).
/// </summary>
public sealed class RealCsvFilesTests : IDisposable
{
    private static readonly DateOnly EndOf2025 = new(2025, 12, 31);

    // California Irrigation Management Information System: a column of quality letters after each value, all of one name; a last line of blanks.
    private const string Cimis = """
        columns: { date: Date, minimum: Min Air Temp (C), maximum: Max Air Temp (C), mean: Avg Air Temp (C), precipitation: Precip (mm), humidity: Avg Rel Hum (%), wind: Avg Wind Speed (m/s) }
        units: { temperature: °C, precipitation: mm }
        date-format: M/d/yyyy
        """;

    private readonly FeedFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData("LHT_CIMIS_daily.csv", 4387)]
    [InlineData("Bryte_CIMIS_daily.csv", 8350)]
    public async Task The_Californian_tables_agree_and_the_line_of_blanks_at_their_end_is_no_day(string file, int daysInFile)
    {
        string path = SharedFiles.Find($"weather/cimis/{file}");
        (WeatherVariable Variable, int Field)[] fields =
        [
            (WeatherVariable.PrecipitationMm, 7), (WeatherVariable.MaximumAirC, 13), (WeatherVariable.MinimumAirC, 15), (WeatherVariable.MeanAirC, 17),
            (WeatherVariable.RelativeHumidityPercent, 23), (WeatherVariable.WindMPerS, 27),
        ];
        IndependentDays expected = new();
        int lines = 0;
        foreach (string[] cells in Cells(path, ','))
        {
            // The one ends with a line of blanks, which is nothing; the other with one of blanks and commas, which is a line without a date.
            if (cells.Length == 1) continue;
            if (cells[3].Trim().Length == 0)
            {
                expected.LeftOut++;
                continue;
            }

            lines++;
            int[] date = [.. cells[3].Split('/').Select(part => int.Parse(part, CultureInfo.InvariantCulture))];
            expected.Put(new DateOnly(date[2], date[0], date[1]), fields.Select(each => (each.Variable, IndependentDays.Number(cells[each.Field], ""))));
        }

        FeedReading reading = await ReadAsync(path, Cimis, 38.5);

        Assert.Equal(daysInFile, lines);
        expected.AssertSameAs(reading);
    }

    // Met Éireann, Dublin Airport, CC BY 4.0: years of two digits that begin in 1942.
    [Fact]
    public async Task The_Irish_table_agrees_in_the_right_century()
    {
        string path = SharedFiles.Find("weather/met-eireann/dly532.csv");
        string[] months = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
        (WeatherVariable Variable, int Field)[] fields =
            [(WeatherVariable.MaximumAirC, 1), (WeatherVariable.MinimumAirC, 2), (WeatherVariable.PrecipitationMm, 4), (WeatherVariable.Soil10CmC, 12)];
        IndependentDays expected = new();
        foreach (string[] cells in Cells(path, ','))
        {
            int year = int.Parse(cells[0][7..], CultureInfo.InvariantCulture);
            DateOnly day = new(year < 42 ? 2000 + year : 1900 + year, Array.IndexOf(months, cells[0][3..6]) + 1, int.Parse(cells[0][..2], CultureInfo.InvariantCulture));
            expected.Put(day, fields.Select(each => (each.Variable, IndependentDays.Number(cells[each.Field], ""))));
        }

        FeedReading reading = await ReadAsync(path, """
            columns: { date: date, minimum: mintp, maximum: maxtp, precipitation: rain, soil10-cm: soil }
            units: { temperature: °C, precipitation: mm }
            date-format: dd-MMM-yy
            """, 53.43);

        Assert.Equal((new DateOnly(1942, 1, 1), new DateOnly(2025, 9, 30)), (reading.Series!.FirstDay, reading.Series.LastDay));
        expected.AssertSameAs(reading);
    }

    // Harvard Forest Data Archive, HF001: NA where a value is missing.
    [Fact]
    public async Task The_table_of_the_forest_in_Massachusetts_agrees()
    {
        string path = SharedFiles.Find("weather/harvard-forest/hf001-06-daily-m.csv");
        string[] header = File.ReadLines(path).First().Split(',');
        (WeatherVariable Variable, string Name)[] columns =
        [
            (WeatherVariable.MinimumAirC, "airtmin"), (WeatherVariable.MaximumAirC, "airtmax"), (WeatherVariable.MeanAirC, "airt"), (WeatherVariable.PrecipitationMm, "prec"),
            (WeatherVariable.SolarRadiationMJ, "slrt"), (WeatherVariable.RelativeHumidityPercent, "rh"), (WeatherVariable.Soil10CmC, "s10t"),
        ];
        IndependentDays expected = new();
        foreach (string[] cells in Cells(path, ','))
        {
            int[] date = [.. cells[0].Split('-').Select(part => int.Parse(part, CultureInfo.InvariantCulture))];
            expected.Put(new DateOnly(date[0], date[1], date[2]), columns.Select(each => (each.Variable, IndependentDays.Number(cells[Array.IndexOf(header, each.Name)], "NA"))));
        }

        FeedReading reading = await ReadAsync(path, """
            columns: { date: date, minimum: airtmin, maximum: airtmax, mean: airt, precipitation: prec, solar-radiation: slrt, humidity: rh, soil10-cm: s10t }
            units: { temperature: °C, precipitation: mm }
            missing: [NA]
            """, 42.53);

        Assert.Equal(5345, reading.Series!.Count);
        expected.AssertSameAs(reading);
    }

    // Deutscher Wetterdienst, product EB, GeoNutzV: soil alone, which no site can live on, so that the configuration asks for the air; the reader can take it.
    [Theory]
    [InlineData("00403")]
    [InlineData("01981")]
    [InlineData("03379")]
    public async Task The_German_tables_agree_though_they_have_no_air(string station)
    {
        string path = SharedFiles.Find($"weather/dwd-soil-daily/produkt_erdbo_tag_20161112_20180515_{station}.txt");
        IndependentDays expected = new();
        foreach (string[] cells in Cells(path, ';'))
        {
            string date = cells[1].Trim();
            expected.Put(
                new DateOnly(int.Parse(date[..4], CultureInfo.InvariantCulture), int.Parse(date[4..6], CultureInfo.InvariantCulture), int.Parse(date[6..], CultureInfo.InvariantCulture)),
                [(WeatherVariable.Soil5CmC, IndependentDays.Number(cells[4], "-999")), (WeatherVariable.Soil10CmC, IndependentDays.Number(cells[5], "-999"))]);
        }

        CsvFeedDefinition soilAlone = new()
        {
            Path = path,
            DateColumn = "MESS_DATUM",
            DateFormat = "yyyyMMdd",
            Separator = ';',
            Columns = new Dictionary<WeatherVariable, string> { [WeatherVariable.Soil5CmC] = "V_TE005M", [WeatherVariable.Soil10CmC] = "V_TE010M" },
            TemperatureUnit = FileTemperatureUnit.Celsius,
            Missing = ["-999"],
        };
        FeedReading reading = await FeedFactory.Create(soilAlone, folder.Root, folder.Clock).ReadAsync(FeedFolder.SiteAt(52), EndOf2025, TestContext.Current.CancellationToken);

        Assert.Equal(550, reading.Series!.Count);
        Assert.Equal(1100, expected.Count);
        expected.AssertSameAs(reading);
    }

    // NOAA NCEI, GHCN-Daily, an order of its climate data online, in °C. The six days on which the maximum is below the minimum are named in ORIGIN.md (SEEN).
    [Theory]
    [InlineData("midnight")]
    [InlineData("morning")]
    public async Task The_order_from_the_archive_agrees_and_its_impossible_days_are_told(string observedAt)
    {
        string path = SharedFiles.Find("weather/ghcn-daily/cdo-export-USC00317202-reidsville-nc.csv");
        int shift = string.Equals(observedAt, "morning", StringComparison.Ordinal) ? 1 : 0;
        Dictionary<DateOnly, double> minimum = [];
        Dictionary<DateOnly, double> maximum = [];
        HashSet<DateOnly> impossible = [];
        foreach (string[] cells in Cells(path, ','))
        {
            DateOnly day = new(int.Parse(cells[2][..4], CultureInfo.InvariantCulture), int.Parse(cells[2][4..6], CultureInfo.InvariantCulture), int.Parse(cells[2][6..], CultureInfo.InvariantCulture));
            (double high, double low) = (IndependentDays.Number(cells[3], "-9999"), IndependentDays.Number(cells[4], "-9999"));
            if (low > high)
            {
                impossible.Add(day);
                continue;
            }

            minimum.Add(day, low);
            maximum.Add(day.AddDays(-shift), high);
        }

        IndependentDays expected = new() { LeftOut = impossible.Count };
        foreach (DateOnly day in minimum.Keys.Union(maximum.Keys).Order())
        {
            expected.Put(day, [(WeatherVariable.MinimumAirC, minimum.GetValueOrDefault(day, double.NaN)), (WeatherVariable.MaximumAirC, maximum.GetValueOrDefault(day, double.NaN))]);
        }

        FeedReading reading = await ReadAsync(path, $"""
            columns: {"{"} date: DATE, minimum: TMIN, maximum: TMAX {"}"}
            units: {"{"} temperature: °C {"}"}
            date-format: yyyyMMdd
            missing: ["-9999"]
            observed-at: {observedAt}
            """, 36.4);

        Assert.Equal(["1992-11-21", "1994-08-22", "1996-12-02", "1997-02-02", "1998-08-09", "1999-06-28"], impossible.Order().Select(day => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)));
        expected.AssertSameAs(reading);
        Assert.All(impossible, day => Assert.Contains(reading.Faults, fault =>
            fault.Severity == FaultSeverity.LeftOut && fault.Problem.StartsWith("The minimum is above the maximum", StringComparison.Ordinal)
            && fault.Line == LineOf(path, day)));
    }

    // Read in the morning, Reidsville's maxima stand a day late (ORIGIN.md, SEEN). A station read at midnight that is not far, Charlottesville in the US Climate Reference
    // Network, shows it by the correlation of the changes from day to day, which a season cannot feign.
    [Fact]
    public async Task Maxima_that_stand_a_day_late_come_to_their_own_day_when_the_feed_says_that_it_is_read_in_the_morning()
    {
        string order = SharedFiles.Find("weather/ghcn-daily/cdo-export-USC00317202-reidsville-nc.csv");
        string climate = SharedFiles.Find("weather/uscrn-daily");
        const string Columns = "columns: { date: DATE, minimum: TMIN, maximum: TMAX }\nunits: { temperature: °C }\ndate-format: yyyyMMdd\nmissing: [\"-9999\"]\n";
        DailySeries atMidnight = (await ReadAsync(order, $"{Columns}observed-at: midnight", 36.4)).Series!;
        DailySeries inTheMorning = (await ReadAsync(order, $"{Columns}observed-at: morning", 36.4)).Series!;
        DailySeries neighbour = (await ReadAsync($"{climate}/*/CRND0103-*-VA_Charlottesville_2_SSE.txt", "", 38, "archive: uscrn-daily\nfiles")).Series!;

        double late = CorrelationOfChanges(atMidnight, neighbour, series => series.MaximumAirC);
        double own = CorrelationOfChanges(inTheMorning, neighbour, series => series.MaximumAirC);

        Assert.True(own > 0.7 && late < 0.3, $"The changes of the maxima go together by {own:F3} read in the morning and by {late:F3} read at midnight.");
    }

    private static IEnumerable<string[]> Cells(string path, char separator) => File.ReadLines(path).Skip(1).Select(line => line.Split(separator));

    private static int LineOf(string path, DateOnly day) =>
        File.ReadLines(path).TakeWhile(line => !line.Contains($",{day:yyyyMMdd},", StringComparison.Ordinal)).Count() + 1;

    private static double CorrelationOfChanges(DailySeries one, DailySeries other, Func<DailySeries, ReadOnlySpan<double>> column)
    {
        List<(double X, double Y)> pairs = [];
        for (DateOnly day = other.FirstDay.AddDays(1); day <= other.LastDay && day <= one.LastDay; day = day.AddDays(1))
        {
            double x = column(one)[one.IndexOf(day)] - column(one)[one.IndexOf(day) - 1];
            double y = column(other)[other.IndexOf(day)] - column(other)[other.IndexOf(day) - 1];
            if (double.IsFinite(x) && double.IsFinite(y)) pairs.Add((x, y));
        }

        (double meanX, double meanY) = (pairs.Average(pair => pair.X), pairs.Average(pair => pair.Y));
        double product = pairs.Sum(pair => (pair.X - meanX) * (pair.Y - meanY));
        return product / Math.Sqrt(pairs.Sum(pair => Math.Pow(pair.X - meanX, 2)) * pairs.Sum(pair => Math.Pow(pair.Y - meanY, 2)));
    }

    private static async Task<FeedReading> ReadAsync(string path, string feed, double latitude, string kind = "csv")
    {
        string keys = string.Join("\n        ", $"{kind}: {path}\n{feed}".Split('\n'));
        using ConfigurationFolder configuration = new($$"""
            region: { name: Real, time-zone: Etc/UTC, units: metric }
            sites:
              - id: green
                name: Green
                latitude: {{latitude.ToString(CultureInfo.InvariantCulture)}}
                longitude: -77
                elevation: 100 m
                turf: [cool-season, warm-season]
                feeds:
                  - {{keys}}
            recipients:
              - { address: adviser@example.org, sites: all, treatments: all }
            operator: { address: operator@example.org }

            """);
        WatchConfiguration read = configuration.Read().Configuration ?? throw new InvalidOperationException(string.Join("\n", configuration.Read().Faults));
        return await FeedFactory.Create(Assert.Single(read.Feeds["green"]), read.BaseFolder, TimeProvider.System)
            .ReadAsync(Assert.Single(read.Region.Sites), EndOf2025, TestContext.Current.CancellationToken);
    }
}
