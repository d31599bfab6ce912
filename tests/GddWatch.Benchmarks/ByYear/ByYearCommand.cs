using System.Diagnostics;
using System.Globalization;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Benchmarks.ByYear;

/// <summary>
/// Reads a file by year of 750 MB from the page cache in several ways in one run, the median of three readings after one that does not count, and asserts that all find
/// the same. To reach: this program's reader through to columns at 700 MB/s on one core, in memory bounded by the result.
/// </summary>
internal static class ByYearCommand
{
    private const int Times = 3;
    private const int Some = 14;

    /// <summary>Runs it: a folder for the files, where they stay for the next run; without one, a folder of their own that is deleted.</summary>
    public static async Task<int> RunAsync(string[] args)
    {
        string folder = args.Length > 0 ? Path.GetFullPath(args[0]) : Directory.CreateTempSubdirectory("gddwatch-by-year-").FullName;
        Directory.CreateDirectory(folder);
        try
        {
            string byDate = Path.Combine(folder, "by-date.csv");
            string shuffled = Path.Combine(folder, "shuffled.csv");
            YearlyTable.WriteByDate(byDate);
            YearlyTable.WriteShuffled(byDate, shuffled);
            bool agrees = await CompareAsync(byDate) & await CompareAsync(shuffled);
            Console.WriteLine(agrees ? "All readers found the same sums." : "The readers DISAGREE.");
            return agrees ? 0 : 1;
        }
        finally
        {
            if (args.Length == 0) Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task<bool> CompareAsync(string path)
    {
        string[] all = [.. Enumerable.Range(0, YearlyTable.Stations).Select(YearlyTable.StationAt)];
        string[] some = [.. all.Where((_, i) => i % (YearlyTable.Stations / Some) == 0).Take(Some)];
        long bytes = new FileInfo(path).Length;
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"\n{Path.GetFileName(path)}: {bytes / 1e6:N0} MB, {YearlyTable.Rows:N0} lines, {all.Length:N0} stations"));
        Console.WriteLine($"{"reader",-46}{"s",8}{"CPU s",8}{"MB/s",9}{"of plain",10}{"peak MB",9}");

        double plain = await MeasureAsync("file in pieces of 1 MiB, nothing parsed", bytes, 0, () => Task.FromResult(YearlyReaders.ReadBytes(path)));
        YearlySums sums = default;
        await MeasureAsync("CsvHelper 34, fields to sums", bytes, plain, () => Task.FromResult(sums = YearlyReaders.ByCsvHelper(path)));
        List<DailySeries> series = [];
        await MeasureAsync($"GddWatch, columns of {Some} stations", bytes, plain, async () => series = await YearlyReaders.ByFeedsAsync(path, some));
        YearlySums ofSome = YearlyReaders.SumsOf(series);
        series = [];
        await MeasureAsync($"GddWatch, columns of all {all.Length:N0} stations", bytes, plain, async () =>
        {
            // What the reading before gave is no part of this one's memory.
            series = [];
            GC.Collect();
            return series = await YearlyReaders.ByFeedsAsync(path, all);
        });
        bool agrees = YearlyReaders.SumsOf(series) == sums && YearlyReaders.SumsOf(series.Where((_, i) => some.Contains(all[i]))) == ofSome && ofSome.Values > 0;
        Console.WriteLine($"  (those columns are {series.Sum(BytesOf) / 1e6:N0} MB)");
        series = [];
#if WITH_DUCKDB
        foreach (int threads in new[] { 1, 2 })
        {
            YearlySums found = default;
            await MeasureAsync($"DuckDB 1.5, fields to sums, threads: {threads}", bytes, plain, () => Task.FromResult(found = DuckDbReader.Read(path, threads)));
            agrees &= found == sums;
        }
#endif
        return agrees;
    }

    private static long BytesOf(DailySeries series)
    {
        long bytes = 0;
        foreach (WeatherVariable variable in Enum.GetValues<WeatherVariable>()) bytes += series.Column(variable).Length * sizeof(double);
        return bytes + (series.MinimumMarks.Length * 2);
    }

    // The peak is the process's so far, so that whoever needs little comes first.
    private static async Task<double> MeasureAsync<T>(string name, long bytes, double plainSeconds, Func<Task<T>> read)
    {
        await read();
        List<(double Seconds, double Cpu)> times = [];
        for (int i = 0; i < Times; i++)
        {
            GC.Collect();
            using var process = Process.GetCurrentProcess();
            TimeSpan cpuBefore = process.TotalProcessorTime;
            long start = Stopwatch.GetTimestamp();
            await read();
            double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
            process.Refresh();
            times.Add((seconds, (process.TotalProcessorTime - cpuBefore).TotalSeconds));
        }

        (double median, double cpu) = times.OrderBy(each => each.Seconds).ElementAt(Times / 2);
        using var now = Process.GetCurrentProcess();
        string ratio = plainSeconds > 0 ? string.Create(CultureInfo.InvariantCulture, $"1/{median / plainSeconds:N1}") : "1";
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name,-46}{median,8:N2}{cpu,8:N2}{bytes / 1e6 / median,9:N0}{ratio,10}{now.PeakWorkingSet64 / 1e6,9:N0}"));
        return median;
    }
}
