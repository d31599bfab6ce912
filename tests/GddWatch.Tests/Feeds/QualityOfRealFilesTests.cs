using System.Diagnostics;
using System.Globalization;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Weather.Checks;
using GddWatch.Feeds;
using GddWatch.Feeds.Archives;
using GddWatch.Feeds.Csv;
using GddWatch.Feeds.Gathering;
using Xunit;

namespace GddWatch.Tests.Feeds;

/// <summary>What quality control makes of real weather.</summary>
public sealed class QualityOfRealFilesTests(ITestOutputHelper output) : IDisposable
{
    private readonly FeedFolder folder = new();

    public void Dispose() => folder.Dispose();

    // Source: NOAA NCEI, US Climate Reference Network, 50 stations, 2010-2023: three sensors a station, so nearly nothing is wrong. Durre et al. 2010 flag 0.24 % of
    // the values of ordinary stations (SEEN).
    [Fact]
    public async Task Hardly_a_value_of_fifty_reference_stations_is_doubted()
    {
        string root = SharedFiles.Find("weather/uscrn-daily");
        long values = 0;
        List<Doubt> all = [];
        foreach (string line in (await File.ReadAllLinesAsync(Path.Combine(root, "stations.csv"), TestContext.Current.CancellationToken)).Skip(1))
        {
            string station = line.Split(',')[0];
            DailySeries series = await ReadAsync(new ArchiveFeedDefinition(ArchiveKind.UscrnDaily, $"*/CRND0103-*-{station}.txt"), root);
            IReadOnlyList<Doubt> doubts = Check(station, series, ref values);
            all.AddRange(doubts);
        }

        double share = all.Count(doubt => doubt.ClearedOn is null) / (double)values;
        output.WriteLine($"{values} values, {share:P4} doubted");
        Assert.True(values > 400_000, $"{values}");
        Assert.InRange(share, 0, 0.001);
    }

    // Source: NOAA NCEI, GHCN-Daily: New York from 1869, Chicago from 1958, State College 2000-2009.
    [Theory]
    [InlineData("USW00094728")]
    [InlineData("USW00094846")]
    [InlineData("USC00368449")]
    public async Task Of_long_archives_few_values_are_doubted_and_cutting_changes_nothing_before_the_cut(string station)
    {
        string root = SharedFiles.Find("weather/ghcn-daily");
        DailySeries series = await ReadAsync(new ArchiveFeedDefinition(ArchiveKind.GhcnDailyDly, $"{station}.dly", ObservedAt: ObservationTime.Midnight), root);
        long values = 0;
        IReadOnlyList<Doubt> doubts = Check(station, series, ref values);

        Assert.InRange(doubts.Count(doubt => doubt.ClearedOn is null) / (double)values, 0, 0.0024);
        DateOnly[] cuts = [.. doubts.Take(4).Select(doubt => doubt.KnownFrom), series.DayAt(series.Count / 2)];
        foreach (DateOnly day in cuts) Assert.Equal(HeldOn(doubts, day), HeldOn(QualityControl.DoubtsOf(series.Until(day)!, []), day));
    }

    // Source: NOAA NCEI, GHCN-Daily, Reidsville NC, whose maxima stand a day late (ORIGIN.md, SEEN, against Durham NC), and the US Climate Reference Network, read at midnight.
    [Fact]
    public async Task Of_stations_within_300_km_only_the_one_that_is_read_in_the_morning_is_said_to_book_its_maxima_a_day_late()
    {
        string root = SharedFiles.Find("weather/uscrn-daily");
        List<(string Name, StationPosition Place, DailySeries Series)> stations = [];
        foreach (string[] cells in (await File.ReadAllLinesAsync(Path.Combine(root, "stations.csv"), TestContext.Current.CancellationToken)).Skip(1).Select(line => line.Split(',')))
        {
            DailySeries series = await ReadAsync(new ArchiveFeedDefinition(ArchiveKind.UscrnDaily, $"*/CRND0103-*-{cells[0]}.txt"), root);
            stations.Add((cells[0], new StationPosition(double.Parse(cells[1], CultureInfo.InvariantCulture), double.Parse(cells[2], CultureInfo.InvariantCulture), null), series));
        }

        var pairs = stations.SelectMany(one => stations.Where(other => other != one && one.Place.KilometresTo(other.Place.Latitude, other.Place.Longitude) <= RegionWeather.NeighbourKm).Select(other => (one, other))).ToArray();
        Assert.True(pairs.Length > 20, $"{pairs.Length}");
        foreach (var (one, other) in pairs)
        {
            // At many times, not at the last alone.
            foreach (int year in Enumerable.Range(2012, 12))
            {
                if (one.Series.Until(new DateOnly(year, 12, 31)) is { } own && other.Series.Until(new DateOnly(year, 12, 31)) is { } theirs) Assert.Null(LateMaxima.Of(own, theirs));
            }
        }

        DailySeries reidsville = await ReadAsync(Reidsville(), root);
        DailySeries charlottesville = stations.Single(station => station.Name == "VA_Charlottesville_2_SSE").Series;
        LateMaxima? late = LateMaxima.Of(reidsville, charlottesville);
        output.WriteLine($"{late}");
        Assert.NotNull(late);
        Assert.Null(LateMaxima.Of(charlottesville, reidsville));
        Assert.Null(LateMaxima.Of(await ReadAsync(Reidsville() with { ObservedAt = ObservationTime.Morning }, root), charlottesville));
    }

    // Source: NOAA NCEI, GHCN-Daily, Reidsville NC: the days of this export on which the minimum is above the maximum. The feed refuses them; here they are let through.
    [Fact]
    public async Task The_impossible_days_of_Reidsville_are_found()
    {
        string[] lines = await File.ReadAllLinesAsync(SharedFiles.Find("weather/ghcn-daily/cdo-export-USC00317202-reidsville-nc.csv"), TestContext.Current.CancellationToken);
        string[] header = lines[0].Split(',');
        DailySeriesBuilder builder = new();
        foreach (string[] row in lines.Skip(1).Select(line => line.Split(',')))
        {
            DateOnly day = DateOnly.ParseExact(row[Array.IndexOf(header, "DATE")], "yyyyMMdd");
            foreach ((string column, WeatherVariable variable) in (ReadOnlySpan<(string, WeatherVariable)>)[("TMIN", WeatherVariable.MinimumAirC), ("TMAX", WeatherVariable.MaximumAirC)])
            {
                double celsius = double.Parse(row[Array.IndexOf(header, column)], System.Globalization.CultureInfo.InvariantCulture);
                if (celsius > -9999) builder.Put(day, variable, celsius);
            }
        }

        long values = 0;
        IReadOnlyList<Doubt> doubts = Check("Reidsville", builder.Build()!, ref values);

        DateOnly[] impossible = [new(1992, 11, 21), new(1994, 8, 22), new(1996, 12, 2), new(1997, 2, 2), new(1998, 8, 9), new(1999, 6, 28)];
        Assert.Equal(impossible, doubts.Where(doubt => doubt.Check == QualityCheck.Internal).Select(doubt => doubt.Day).Distinct());
        Assert.InRange(doubts.Count(doubt => doubt.ClearedOn is null) / (double)values, 0, 0.0024);
    }

    // Source: NOAA NCEI, GHCN-Daily. The archive's own flags are taken off the temperatures, so that its doubted values are read, and compared with ours.
    [Theory]
    [InlineData("USW00094728", 2)]
    [InlineData("USC00368449", 1)]
    public async Task The_archives_own_flags_are_compared_with_ours(string station, int flaggedByArchive)
    {
        HashSet<(DateOnly, WeatherVariable)> flagged = [];
        string[] lines = await File.ReadAllLinesAsync(SharedFiles.Find($"weather/ghcn-daily/{station}.dly"), TestContext.Current.CancellationToken);
        for (int i = 0; i < lines.Length; i++)
        {
            if (lines[i][17..21] is not ("TMAX" or "TMIN")) continue;
            char[] line = lines[i].ToCharArray();
            for (int day = 1; day <= 31; day++)
            {
                ref char flag = ref line[27 + ((day - 1) * 8)];
                if (flag == ' ') continue;
                flagged.Add((DateOnly.ParseExact($"{lines[i][11..17]}{day:00}", "yyyyMMdd"), lines[i][17..21] == "TMIN" ? WeatherVariable.MinimumAirC : WeatherVariable.MaximumAirC));
                output.WriteLine($"archive: {lines[i][11..21]} day {day} flag {flag}, {lines[i].Substring(21 + ((day - 1) * 8), 5)} tenths");
                flag = ' ';
            }

            lines[i] = new string(line);
        }

        folder.With(string.Join('\n', lines) + "\n", "unflagged.dly");
        long values = 0;
        IReadOnlyList<Doubt> doubts = Check(station, await ReadAsync(new ArchiveFeedDefinition(ArchiveKind.GhcnDailyDly, "unflagged.dly", ObservedAt: ObservationTime.Midnight), folder.Root), ref values);

        int hits = doubts.Where(doubt => doubt.ClearedOn is null).Select(doubt => (doubt.Day, doubt.Variable)).Distinct().Count(flagged.Contains);
        int others = doubts.Where(doubt => doubt.ClearedOn is null).Select(doubt => (doubt.Day, doubt.Variable)).Distinct().Count() - hits;
        output.WriteLine($"{hits} of {flagged.Count} flagged values doubted, {others} others");
        Assert.Equal(flaggedByArchive, flagged.Count);
        Assert.InRange(others / (double)values, 0, 0.0001);
    }

    private static CsvFeedDefinition Reidsville() => FeedFolder.Csv(SharedFiles.Find("weather/ghcn-daily/cdo-export-USC00317202-reidsville-nc.csv")) with
    {
        Columns = new Dictionary<WeatherVariable, string> { [WeatherVariable.MinimumAirC] = "TMIN", [WeatherVariable.MaximumAirC] = "TMAX" },
        DateColumn = "DATE",
        DateFormat = "yyyyMMdd",
        Missing = ["-9999"],
    };

    private IReadOnlyList<Doubt> Check(string name, DailySeries series, ref long values)
    {
        long known = 0;
        for (int i = 0; i < series.Count; i++) known += (double.IsNaN(series.MinimumAirC[i]) ? 0 : 1) + (double.IsNaN(series.MaximumAirC[i]) ? 0 : 1);
        values += known;
        Stopwatch watch = Stopwatch.StartNew();
        IReadOnlyList<Doubt> doubts = QualityControl.DoubtsOf(series, []);
        output.WriteLine($"{name}: {known} values, {doubts.Count(doubt => doubt.ClearedOn is null)} doubted, {doubts.Count(doubt => doubt.ClearedOn is not null)} for a day, {watch.ElapsedMilliseconds} ms");
        foreach (Doubt doubt in doubts) output.WriteLine($"  {doubt.Check}: {doubt.Why}{(doubt.ClearedOn is null ? "" : " (cleared)")}");
        return doubts;
    }

    private static (DateOnly, WeatherVariable, QualityCheck, string)[] HeldOn(IReadOnlyList<Doubt> doubts, DateOnly day) =>
        [.. doubts.Where(doubt => doubt.HoldsOn(day)).Select(doubt => (doubt.Day, doubt.Variable, doubt.Check, doubt.Why))];

    private async Task<DailySeries> ReadAsync(FeedDefinition definition, string root) =>
        (await FeedFactory.Create(definition, root, folder.Clock).ReadAsync(FeedFolder.SiteAt(40), FeedFolder.Today, TestContext.Current.CancellationToken)).Series!;
}
