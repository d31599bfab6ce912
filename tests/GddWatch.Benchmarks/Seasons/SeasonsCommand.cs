using System.Diagnostics;
using System.Globalization;
using GddWatch.Agronomy.Weather;
using GddWatch.Benchmarks.ByYear;
#if WITH_DUCKDB
using DuckDB.NET.Data;
#endif

namespace GddWatch.Benchmarks.Seasons;

/// <summary>
/// The whole of `gddwatch backtest` as a process of its own: all treatments of config/treatments.yaml at many stations over 30 years, from one file whose lines come in an order by
/// chance; beside it, on the same file, SQL and a script that only pair the values and make one heat sum and one 5-day mean. What these two and this program's reader
/// find must be the same. To reach with 1,000 stations: 15 s, 1.5 GB, a fifth of the time of the SQL and a fifteenth of that of the script.
/// </summary>
internal static class SeasonsCommand
{
    private const int DefaultStations = 1000;

    /// <summary>Runs it: how many stations, and a folder for the files, where they stay for the next run; without one, a folder of their own that is deleted.</summary>
    public static async Task<int> RunAsync(string[] args, CancellationToken stop)
    {
        int stations = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : DefaultStations;
        string folder = args.Length > 1 ? Path.GetFullPath(args[1]) : Directory.CreateTempSubdirectory("gddwatch-seasons-").FullName;
        Directory.CreateDirectory(folder);
        try
        {
            string root = Root.Find();
            string file = SeasonsTable.Write(folder, stations, Path.Combine(root, "config", "treatments.yaml"));
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"\n{Path.GetFileName(file)}: {new FileInfo(file).Length / 1e6:N0} MB, {stations:N0} stations of {SeasonsTable.Years} years"));
            Console.WriteLine($"{"",-52}{"s",8}{"CPU s",8}{"peak MB",9}");
            string program = Path.Combine(root, "artifacts", "publish", "gddwatch", "gddwatch.dll");
            if (!IsOfTheseSources(root, program)) return 1;
            MeasuredProcess backtest = await MeasuredProcess.RunAsync(
                "dotnet", [program, "backtest", "--config", Path.Combine(folder, $"config-{stations}"), "--data", Path.Combine(folder, "data"), "--format", "csv"], stop);
            Print("gddwatch backtest, all treatments, as CSV", backtest.Seconds, backtest.CpuSeconds, backtest.PeakMB);
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  ({backtest.Output.AsSpan().Count('\n') - 1:N0} seasons judged)"));
            return await CompareAsync(file, root, stations, backtest.Seconds, stop) ? 0 : 1;
        }
        finally
        {
            if (args.Length < 2) Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>Whether the program was published after the sources were changed last; says what to do where it was not.</summary>
    private static bool IsOfTheseSources(string root, string program)
    {
        DateTime changed = Directory.EnumerateFiles(Path.Combine(root, "src"), "*.cs", SearchOption.AllDirectories).Max(File.GetLastWriteTimeUtc);
        if (File.GetLastWriteTimeUtc(program) >= changed) return true;
        Console.Error.WriteLine(
            $"{program} is not there, or older than the sources. Publish it first: dotnet publish src/GddWatch -c Release --use-current-runtime --self-contained false -p:PublishReadyToRun=true -o artifacts/publish/gddwatch");
        return false;
    }

    private static async Task<bool> CompareAsync(string file, string root, int stations, double backtestSeconds, CancellationToken stop)
    {
        TableSums own = await OwnAsync(file, stations);
        bool agree = true;
#if WITH_DUCKDB
        using (DuckDBConnection connection = new("DataSource=:memory:"))
        {
            connection.Open();
            long start = Stopwatch.GetTimestamp();
            TimeSpan cpuBefore = Environment.CpuUsage.TotalTime;
            HeatSumsBySql.Run(file, stations, threads: 2, connection);
            double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
            Print("DuckDB 1.5, tuned SQL: one heat sum, one mean", seconds, (Environment.CpuUsage.TotalTime - cpuBefore).TotalSeconds, null);
            agree &= Compare("DuckDB", HeatSumsBySql.Sums(connection), own, seconds / backtestSeconds);
        }
#endif
        if (!File.Exists("/usr/bin/python3")) return agree;
        MeasuredProcess script = await MeasuredProcess.RunAsync("/usr/bin/python3", [Path.Combine(root, "tests", "GddWatch.Benchmarks", "Seasons", "heat_sums.py"), file], stop);
        Print("pandas, a script: one heat sum, one mean", script.Seconds, script.CpuSeconds, script.PeakMB);
        double[] found = [.. script.Output.Split(' ').Select(each => double.Parse(each, CultureInfo.InvariantCulture))];
        return agree & Compare("pandas", new TableSums((long)found[0], found[1], found[2], found[3]), own, script.Seconds / backtestSeconds);
    }

    private static async Task<TableSums> OwnAsync(string file, int stations)
    {
        long start = Stopwatch.GetTimestamp();
        TimeSpan cpuBefore = Environment.CpuUsage.TotalTime;
        List<DailySeries> all = await YearlyReaders.ByFeedsAsync(file, [.. Enumerable.Range(0, stations).Select(SeasonsTable.StationAt)]);
        TableSums sums = HeatSumsByColumns.Of(all);
        Print("GddWatch's reader and heat sums: the same alone", Stopwatch.GetElapsedTime(start).TotalSeconds, (Environment.CpuUsage.TotalTime - cpuBefore).TotalSeconds, null);
        return sums;
    }

    private static bool Compare(string name, TableSums found, TableSums own, double times)
    {
        bool isSame = found.Equal(own);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  ({name} took {times:N1} times as long as the backtest; its sums {(isSame ? "are the same as GddWatch's" : $"DIFFER: {found} and {own}")})"));
        return isSame;
    }

    private static void Print(string name, double seconds, double cpu, double? peakMB) =>
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name,-52}{seconds,8:N2}{cpu,8:N2}{(peakMB is { } peak ? peak.ToString("N0", CultureInfo.InvariantCulture) : "-"),9}"));
}
