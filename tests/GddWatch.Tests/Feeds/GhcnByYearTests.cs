using System.Globalization;
using System.Text;
using GddWatch.Feeds;
using GddWatch.Feeds.Archives;
using GddWatch.Feeds.Archives.Ghcn;
using GddWatch.Feeds.Faults;
using Xunit;
using static GddWatch.Tests.Feeds.GhcnLines;

namespace GddWatch.Tests.Feeds;

/// <summary>GHCN-Daily by year: any order, many stations, one reading for all sites.</summary>
public sealed class GhcnByYearTests : IDisposable
{
    private readonly FeedFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task Rows_in_any_order_give_the_same_series()
    {
        string[] rows = [.. Rows(Station, 60), .. Rows("USW00088888", 60), .. Rows("CA00AAAAAAA", 60)];
        folder.With(string.Join('\n', rows) + "\n", "sorted/2024.csv");
        string[] shuffled = [.. rows];
        new Random(20240401).Shuffle(shuffled);
        folder.With(PackedFileTests.Gzip(string.Join('\n', shuffled)), "shuffled/2024.csv.gz");

        FeedReading sorted = await ReadAsync(folder, ByYear("sorted/*.csv"));
        FeedReading other = await ReadAsync(folder, ByYear("shuffled/*.csv.gz"));

        Assert.Empty(sorted.Faults);
        Assert.Empty(other.Faults);
        Assert.Equal(60, sorted.Series!.Count);
        Assert.Equal(sorted.Series.MaximumAirC.ToArray(), other.Series!.MaximumAirC.ToArray());
        Assert.Equal(sorted.Series.MinimumAirC.ToArray(), other.Series.MinimumAirC.ToArray());
    }

    // The reader of a station's own file takes each line as it comes; the lines of many stations are gathered first, and must tell the same of each.
    [Fact]
    public async Task Lines_of_many_stations_by_chance_give_each_what_the_stations_own_reader_finds_with_the_same_faults()
    {
        string[] stations = [.. Enumerable.Range(0, 30).Select(i => $"USW{i:00000000}")];
        // More than a file is read at once.
        List<string> rows = [.. stations.SelectMany(station => Rows(station, 600))];
        foreach (string station in stations)
        {
            rows.AddRange([$"{station},20240105,TMAX,999,,,W,2400", $"{station},20240106,TMIN,-9999,,,W,2400", $"{station},20240107,TMAX,111,,I,W,2400", $"{station},20240107,PRCP,0,P,,W,"]);
            rows.AddRange([$"{station},20240108,TMAX,12.5,,,W,", $"{station},20240109,TMAX,7,,,W,0700", $"{station},20240110,TMAX,7,,,WW,", $"{station},20240111,TOBS,7,,,W,", $"{station},20240112,SNWD,20", "broken"]);
        }

        string[] shuffled = [.. rows];
        new Random(20240402).Shuffle(shuffled);
        folder.With(string.Join('\n', shuffled), "2024.csv");
        ArchiveFeedDefinition[] feeds = [.. stations.Select(station => ByYear("2024.csv", station))];
        using YearlyFiles files = new(feeds, folder.Root, folder.Clock);

        foreach (ArchiveFeedDefinition feed in feeds)
        {
            FeedReading gathered = await FeedFactory.Create(feed, folder.Root, folder.Clock, files).ReadAsync(FeedFolder.SiteAt(45), FeedFolder.Today, TestContext.Current.CancellationToken);
            FeedReading oneByOne = await ReadAsync(folder, StationCsv("2024.csv", feed.Station));

            Assert.Equal(oneByOne.Series!.FirstDay, gathered.Series!.FirstDay);
            Assert.Equal(oneByOne.Series.MaximumAirC.ToArray(), gathered.Series.MaximumAirC.ToArray());
            Assert.Equal(oneByOne.Series.MinimumAirC.ToArray(), gathered.Series.MinimumAirC.ToArray());
            string[] faults = [.. oneByOne.Faults.Select(fault => fault.ToString()).Where(fault => !fault.Contains("not a record", StringComparison.Ordinal))];
            Assert.Equal(faults, gathered.Faults.Select(fault => fault.ToString()).Where(fault => !fault.Contains("not a record", StringComparison.Ordinal)));
            Assert.True(faults.Length >= 5, string.Join('\n', faults));
        }
    }

    [Fact]
    public async Task A_file_that_many_sites_share_is_read_once()
    {
        string[] stations = [.. Enumerable.Range(0, 200).Select(i => $"USW{i:00000000}")];
        folder.With(string.Join('\n', stations.SelectMany(station => Rows(station, 30))), "2024.csv").With(string.Join('\n', stations.SelectMany(station => Rows(station, 30, 2023))), "2023.csv");
        ArchiveFeedDefinition[] feeds = [.. stations.Select(station => ByYear("20*.csv", station))];
        using YearlyFiles files = new(feeds, folder.Root, folder.Clock);

        for (int i = 0; i < stations.Length; i++)
        {
            FeedReading reading = await FeedFactory.Create(feeds[i], folder.Root, folder.Clock, files)
                .ReadAsync(FeedFolder.SiteAt(45), FeedFolder.Today, TestContext.Current.CancellationToken);
            Assert.Equal(MaximumOf(stations[i], 0) / 10.0, reading.MaximumAt("2024-01-01"));
            Assert.Equal(MaximumOf(stations[i], 29) / 10.0, reading.MaximumAt("2023-01-30"));
        }

        Assert.Equal(2, files.FilesRead);
    }

    [Fact]
    public async Task Who_watches_is_told_each_megabyte_of_files_that_are_then_not_read_again()
    {
        string[] stations = [.. Enumerable.Range(0, 60).Select(i => $"USW{i:00000000}")];
        folder.With(string.Join('\n', stations.SelectMany(station => Rows(station, 366))), "2024.csv").With(string.Join('\n', stations.SelectMany(station => Rows(station, 30, 2023))), "2023.csv");
        long bytes = new FileInfo(Path.Combine(folder.Root, "2024.csv")).Length;
        ArchiveFeedDefinition[] feeds = [.. stations.Select(station => ByYear("20*.csv", station))];
        using YearlyFiles files = new(feeds, folder.Root, folder.Clock);
        int told = 0;
        await files.ReadAllAsync(() => told++, TestContext.Current.CancellationToken);
        Assert.Equal(bytes / 1_000_000, told);
        Assert.InRange(told, 1, 20);
        Assert.Equal(told, files.Megabytes);
        FeedReading reading = await FeedFactory.Create(feeds[7], folder.Root, folder.Clock, files).ReadAsync(FeedFolder.SiteAt(45), FeedFolder.Today, TestContext.Current.CancellationToken);
        Assert.Equal(MaximumOf(stations[7], 0) / 10.0, reading.MaximumAt("2024-01-01"));
        Assert.Equal(2, files.FilesRead);
    }

    [Fact]
    public async Task Who_stops_the_reading_is_told_that_it_was_stopped()
    {
        string[] stations = [.. Enumerable.Range(0, 60).Select(i => $"USW{i:00000000}")];
        folder.With(string.Join('\n', stations.SelectMany(station => Rows(station, 366))), "2024.csv");
        using YearlyFiles files = new(stations.Select(station => ByYear("2024.csv", station)), folder.Root, folder.Clock);
        using CancellationTokenSource source = new();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => files.ReadAllAsync(source.Cancel, source.Token));
    }

    // Each real file turned into lines of the other format and read again: the same series must come out. Source of the values: NOAA NCEI, GHCN-Daily.
    [Fact]
    public async Task A_real_station_gives_the_same_series_by_month_and_by_year()
    {
        string root = SharedFiles.Find("weather/ghcn-daily");
        StringBuilder text = new();
        foreach (string line in await File.ReadAllLinesAsync(Path.Combine(root, "USC00368449.dly"), TestContext.Current.CancellationToken))
        {
            for (int day = 31; day >= 1; day--)
            {
                string group = line.Substring(21 + ((day - 1) * 8), 8);
                if (!group.StartsWith("-9999", StringComparison.Ordinal)) text.Append($"{line[..11]},{line[11..17]}{day:00},{line[17..21]},{group[..5]},{group[5]},{group[6]},{group[7]},\n".Replace(" ", "", StringComparison.Ordinal));
            }
        }

        folder.With(text.ToString(), "all.csv");
        FeedReading byYear = await ReadAsync(folder, ByYear("all.csv", "USC00368449"));
        FeedReading byMonth = await FeedFactory.Create(Dly("USC00368449.dly"), root, folder.Clock).ReadAsync(FeedFolder.SiteAt(45), FeedFolder.Today, TestContext.Current.CancellationToken);

        Assert.Equal(byMonth.Series!.FirstDay, byYear.Series!.FirstDay);
        Assert.Equal(byMonth.Series.MaximumAirC.ToArray(), byYear.Series.MaximumAirC.ToArray());
        Assert.Equal(byMonth.Series.MinimumAirC.ToArray(), byYear.Series.MinimumAirC.ToArray());
    }

    [Fact]
    public async Task A_morning_maximum_crosses_the_border_of_two_years()
    {
        folder.With($"{Station},20231231,TMAX,100,,,7,0700\n{Station},20231231,TMIN,10,,,7,0700\n", "2023.csv").With($"{Station},20240101,TMAX,150,,,7,0700\n{Station},20240101,TMIN,20,,,7,0700\n", "2024.csv");

        FeedReading reading = await ReadAsync(folder, ByYear());

        Assert.Empty(reading.Faults);
        Assert.Equal((10.0, 15.0, null), (reading.MaximumAt("2023-12-30"), reading.MaximumAt("2023-12-31"), reading.MaximumAt("2024-01-01")));
    }

    [Fact]
    public async Task A_station_that_is_not_there_is_told_with_some_that_are()
    {
        FeedReading reading = await ReadAsync(folder.With(string.Join('\n', Rows("USW00088888", 3)), "2024.csv"), ByYear());

        Fault fault = Assert.Single(reading.Faults);
        Assert.Equal(FaultSeverity.Refused, fault.Severity);
        Assert.Contains($"No line is of the station \"{Station}\"", fault.Problem, StringComparison.Ordinal);
        Assert.Contains("USW00088888", fault.Accepted, StringComparison.Ordinal);
    }

    public static TheoryData<string, string> Spoiled => new()
    {
        { "", "" },
        { $"{Station},20240102,TMAX", "not a record" },
        { $"{Station},20240102,TMAX,1,,,W,2400,9", "not a record" },
        { $"{Station},20240132,TMAX,100,,,W,", "not a date" },
        { $"{Station},2024-01-02,TMAX,100,,,W,", "not a date" },
        { $"{Station},20240102,TMAX,10.5,,,W,", "not a whole number" },
        { $"{Station},20240102,TMAX,99999999999,,,W,", "not a whole number" },
        { $"{Station},20240102,TMAX,9999,,,W,", "outside everything" },
        { $"{Station},20240102,TMAX,100,,,WW,", "A flag has one character" },
        { $"{Station},20240101,TMAX,999,,,W,", "outside everything" },
        { $"{Station},20240101,TMAX,300,,,W,", "second time with another value" },
        { "USW1,20240102,TMAX,100,,,W,", "not a record" },
        { "\u0001\u0002\u0003\u00ff", "not a record" },
        { new string('x', 50_000), "50,000 bytes long" },
    };

    [Theory]
    [MemberData(nameof(Spoiled))]
    public async Task A_spoiled_line_is_told_with_its_place_and_the_others_are_kept(string line, string problem)
    {
        string[] rows = [.. Rows(Station, 1), line, .. Rows(Station, 3).Skip(4)];

        FeedReading reading = await ReadAsync(folder.With(string.Join("\r\n", rows) + "\r\n", "2024.csv"), ByYear());

        Fault? fault = reading.Faults.FirstOrDefault(each => each.Severity == FaultSeverity.LeftOut);
        if (problem.Length == 0) Assert.Null(fault);
        else
        {
            Assert.Equal(("2024.csv", 3), (fault!.File, fault.Line));
            Assert.Contains(problem, fault.Problem, StringComparison.Ordinal);
        }

        Assert.Equal((MaximumOf(Station, 0) / 10.0, MaximumOf(Station, 2) / 10.0), (reading.MaximumAt("2024-01-01"), reading.MaximumAt("2024-01-03")));
    }

    [Fact]
    public async Task A_line_longer_than_the_buffer_costs_itself_alone()
    {
        string[] rows = [.. Rows(Station, 1), new string('x', 3_000_000), .. Rows(Station, 2).Skip(2), "broken"];

        FeedReading reading = await ReadAsync(folder.With(string.Join('\n', rows) + "\n", "2024.csv"), ByYear());

        Assert.Equal([3, 6], reading.Faults.Select(fault => fault.Line!.Value));
        Assert.Equal(MaximumOf(Station, 1) / 10.0, reading.MaximumAt("2024-01-02"));
    }

    [Fact]
    public async Task Binary_files_empty_ones_and_broken_packed_ones_are_refused_in_a_sentence()
    {
        folder.With([1, 0, 2, 0, 3, 0], "binary/2024.csv").With([], "empty/2024.csv").With("hello", "broken/2024.csv.gz").With("", "folder/2024.csv/x");

        Assert.Contains("not text", (await ReadAsync(folder, ByYear("binary/2024.csv"))).OnlyFault().Problem, StringComparison.Ordinal);
        Assert.Contains("empty", (await ReadAsync(folder, ByYear("empty/2024.csv"))).OnlyFault().Problem, StringComparison.Ordinal);
        Assert.Contains("cannot be unpacked", (await ReadAsync(folder, ByYear("broken/2024.csv.gz"))).OnlyFault().Problem, StringComparison.Ordinal);
        Assert.Contains("No file matches", (await ReadAsync(folder, ByYear("folder/2024.csv"))).OnlyFault().Problem, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_packed_year_that_was_cut_short_keeps_its_whole_lines()
    {
        byte[] whole = PackedFileTests.Gzip(string.Join('\n', Rows(Station, 300)) + "\n");

        FeedReading reading = await ReadAsync(folder.With(whole[..(whole.Length * 2 / 3)], "2024.csv.gz"), ByYear("2024.csv.gz"));

        Assert.True(reading.Series!.Count is > 50 and < 300, $"{reading.Series.Count} days");
        Assert.Contains("cut short", Assert.Single(reading.Faults, fault => fault.Severity == FaultSeverity.LeftOut).Problem, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Days_after_today_are_told_and_left_out()
    {
        FeedReading reading = await ReadAsync(folder.With($"{Station},20250630,TMAX,100,,,W,\n{Station},20250701,TMAX,110,,,W,\n", "2025.csv"), ByYear());

        Assert.Contains("still to come", Assert.Single(reading.Faults).Problem, StringComparison.Ordinal);
        Assert.Equal(FeedFolder.Today, reading.Series!.LastDay);
    }

    private static int MaximumOf(string station, int day) => 100 + (((StringComparer.Ordinal.Compare(station, "") + station[^1] + (station[^2] * 7)) * 31 + (day * 17)) % 150);

    private static string[] Rows(string station, int days, int year = 2024) =>
    [
        .. Enumerable.Range(0, days).SelectMany(i =>
        {
            string date = new DateOnly(year, 1, 1).AddDays(i).ToString("yyyyMMdd", CultureInfo.InvariantCulture);
            return new[] { $"{station},{date},TMAX,{MaximumOf(station, i)},,,W,2400", $"{station},{date},TMIN,{MaximumOf(station, i) - 90},,,W,2400" };
        }),
    ];
}
