using System.Globalization;
using GddWatch.Agronomy.Chances;
using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;
using GddWatch.Benchmarks.Pass;
using GddWatch.Commands;

namespace GddWatch.Benchmarks.Chances;

/// <summary>
/// The chances of all windows of many invented sites on some days of a year, each with a forecast of a week, and the judging of the day beside it, from nothing but the weather. In memory, one site after the other; by
/// CPU time, what the runtime collects and compiles included.
/// </summary>
internal static class OutlookCommand
{
    private const int DefaultSites = 200, DefaultYears = 12, ForecastDays = 7, WholeRegion = 10_000;

    private static readonly DateOnly Last = new(2026, 12, 31);

    private static readonly DateOnly[] Days = [new(2026, 2, 16), new(2026, 4, 20), new(2026, 6, 15), new(2026, 8, 17), new(2026, 10, 19), new(2026, 12, 14)];

    /// <summary>Runs it: how many sites, and how many years of history.</summary>
    public static int Run(string[] args)
    {
        int sites = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : DefaultSites;
        int years = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : DefaultYears;
        DirectoryInfo folder = Directory.CreateTempSubdirectory("gddwatch-outlook-");
        try
        {
            Measure(folder.FullName, sites, years);
            return 0;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static void Measure(string folder, int sites, int years)
    {
        var invented = new PassRegion(sites, new DateOnly(Last.Year - years, 1, 1), Last);
        invented.WriteConfiguration(folder, Path.Combine(Root.Find(), "config"));
        Workplace place = Workplace.Open(folder, new Terminal(Console.Out, Console.Error, new PassClock(Last), isInteractive: false))!;
        DailySeries[] weather = [.. invented.Weather()];
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{sites:N0} sites, {years} years of history, {place.Configuration.Treatments.Count} treatments; CPU milliseconds for a site"));
        Console.WriteLine($"{"day",-12}{"judged",9}{"ahead",9}{"windows",9}{"CPU s for 10,000 sites, ahead alone",38}");
        // Once unmeasured, until the code is compiled as it stays.
        Measured(Days[0]);
        double all = 0;
        foreach (DateOnly day in Days)
        {
            (TimeSpan judged, TimeSpan ahead, int windows) = Measured(day);
            double each = ahead.TotalMilliseconds / sites;
            all += each / Days.Length;
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{day,-12:yyyy-MM-dd}{judged.TotalMilliseconds / sites,9:N2}{each,9:N2}{windows / (double)sites,9:N1}{each * WholeRegion / 1000,38:N0}"));
        }

        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{"mean",-12}{"",9}{all,9:N2}{"",9}{all * WholeRegion / 1000,38:N0}"));

        (TimeSpan Judged, TimeSpan Ahead, int Windows) Measured(DateOnly day)
        {
            TimeSpan judged = default, ahead = default;
            int windows = 0;
            for (int i = 0; i < sites; i++)
            {
                TimeSpan start = Environment.CpuUsage.TotalTime;
                SiteMetrics metrics = SiteMetrics.Of(WeatherHistory.Of(weather[i].Until(day)!, [], [], [ForecastOf(weather[i], day)]).AsOf(day)!, place.Region.Sites[i], SiteJournal.Empty, []);
                Standing standing = WindowJudge.Judge(place.Configuration.Treatments, metrics, day);
                TimeSpan between = Environment.CpuUsage.TotalTime;
                windows += Outlook.Of(standing, metrics).Chances.Count;
                judged += between - start;
                ahead += Environment.CpuUsage.TotalTime - between;
            }

            return (judged, ahead, windows);
        }
    }

    private static Forecast ForecastOf(DailySeries weather, DateOnly day) =>
        new(day, new DateTimeOffset(day, new TimeOnly(6, 0), TimeSpan.Zero), weather.From(day).Until(day.AddDays(ForecastDays))!);
}
