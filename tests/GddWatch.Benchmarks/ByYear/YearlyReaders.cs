using CsvHelper;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Weather;
using GddWatch.Feeds;
using GddWatch.Feeds.Archives;
using GddWatch.Feeds.Archives.Ghcn;

namespace GddWatch.Benchmarks.ByYear;

/// <summary>The readers that are compared, each from the file to the sums.</summary>
internal static class YearlyReaders
{
    private static readonly DateOnly Today = new(2026, 1, 1);

    /// <summary>The file in pieces of 1 MiB, of which nothing is looked at: what reading costs at least.</summary>
    public static long ReadBytes(string path)
    {
        byte[] piece = new byte[1 << 20];
        using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.Read, bufferSize: 0, FileOptions.SequentialScan);
        long total = 0;
        for (int count = file.Read(piece); count > 0; count = file.Read(piece)) total += count;
        return total;
    }

    /// <summary>The package's low-level reader: fields as bytes, numbers parsed, no days, no columns.</summary>
    public static YearlySums ByCsvHelper(string path)
    {
        using var reader = CsvReader.FromFile(path, new CsvReaderOptions
        {
            Separator = ',',
            HasHeader = false,
            FieldCountMismatch = CsvFieldCountHandling.Throw,
            MissingField = CsvMissingFieldHandling.Throw,
            MalformedData = CsvMalformedDataHandling.Throw,
            TrackLineNumbers = true,
        });
        YearlySums sums = default;
        long dates = 0;
        while (reader.Read())
        {
            dates += reader.Parse<int>(1);
            ReadOnlySpan<byte> element = reader.GetSpan(2);
            if (!reader.GetSpan(5).IsEmpty) continue;
            if (element.SequenceEqual("TMAX"u8)) sums = sums with { Values = sums.Values + 1, MaximumTenths = sums.MaximumTenths + reader.Parse<int>(3) };
            else if (element.SequenceEqual("TMIN"u8)) sums = sums with { Values = sums.Values + 1, MinimumTenths = sums.MinimumTenths + reader.Parse<int>(3) };
            else if (element.SequenceEqual("PRCP"u8)) sums = sums with { Values = sums.Values + 1, PrecipitationTenths = sums.PrecipitationTenths + reader.Parse<int>(3) };
        }

        return dates > 0 ? sums : default;
    }

    /// <summary>This program's reader: the daily series of the given stations, as sites that share the file get them.</summary>
    public static async Task<List<DailySeries>> ByFeedsAsync(string path, IReadOnlyList<string> stations)
    {
        ArchiveFeedDefinition[] feeds = [.. stations.Select(station => new ArchiveFeedDefinition(ArchiveKind.GhcnDailyByYearCsv, path, station))];
        Site site = new() { Id = "site", Name = "Site", Latitude = 45, Longitude = 0, ElevationM = 0, TimeZone = "Etc/UTC", Turf = [TurfType.CoolSeason] };
        using YearlyFiles files = new(feeds, "/", TimeProvider.System);
        List<DailySeries> all = [];
        foreach (ArchiveFeedDefinition feed in feeds)
        {
            FeedReading reading = await FeedFactory.Create(feed, "/", TimeProvider.System, files).ReadAsync(site, Today, CancellationToken.None);
            all.Add(reading.Series ?? throw new InvalidOperationException(string.Join("; ", reading.Faults)));
        }

        return all;
    }

    /// <summary>The sums of series, back in tenths.</summary>
    public static YearlySums SumsOf(IEnumerable<DailySeries> all)
    {
        YearlySums sums = default;
        foreach (DailySeries series in all)
        {
            (long maxima, long maximum) = Sum(series.MaximumAirC);
            (long minima, long minimum) = Sum(series.MinimumAirC);
            (long totals, long precipitation) = Sum(series.Column(WeatherVariable.PrecipitationMm));
            sums = new(sums.Values + maxima + minima + totals, sums.MaximumTenths + maximum, sums.MinimumTenths + minimum, sums.PrecipitationTenths + precipitation);
        }

        return sums;
    }

    private static (long Count, long Tenths) Sum(ReadOnlySpan<double> column)
    {
        long count = 0;
        long tenths = 0;
        foreach (double value in column)
        {
            if (double.IsNaN(value)) continue;
            count++;
            tenths += (long)Math.Round(value * 10);
        }

        return (count, tenths);
    }
}
