using System.Diagnostics;
using System.Globalization;
using GddWatch.Agronomy.Weather;
using GddWatch.Feeds.Faults;
using GddWatch.Feeds.Services;
using GddWatch.Feeds.Services.Fetching;

namespace GddWatch.Benchmarks.Fetch;

/// <summary>
/// One daily fetch for 1,000 sites from each service, over HTTP from a server in this very process that answers each request after 50 ms, and asserts that every site got
/// its days. To reach: under 20 s and under 300 MB for each service. The pace that spares the services' own hosts does not hold for this machine and is no part of it.
/// </summary>
internal static class FetchCommand
{
    private const double MostSeconds = 20;
    private const double MostMB = 300;

    // With both extremes. Today may be over in part, and the last day may lack one.
    private const int LeastForecastDays = 6;

    // What an archive alone, a forecast alone, or both give.
    private static readonly (ServiceKind Kind, bool HasObserved, bool HasForecast)[] Services =
        [(ServiceKind.NoaaDailySummaries, true, false), (ServiceKind.OpenMeteo, true, true), (ServiceKind.UsWeatherService, false, true)];

    /// <summary>Runs it: the word of a service for that one alone; without one, all of them, of which the peak is the process's so far.</summary>
    public static async Task<int> RunAsync(string[] args, CancellationToken stop)
    {
        if (args.Length > 1 || (args.Length == 1 && !Services.Any(each => ServiceFacts.Word(each.Kind) == args[0])))
        {
            Console.Error.WriteLine($"fetch takes the word of one service or none: {string.Join(", ", Services.Select(each => ServiceFacts.Word(each.Kind)))}.");
            return 2;
        }

        Console.WriteLine($"{"service",-24}{"s",8}{"requests",10}{"peak MB",10}");
        bool isGood = true;
        foreach ((ServiceKind kind, bool hasObserved, bool hasForecast) in Services)
        {
            if (args.Length == 0 || ServiceFacts.Word(kind) == args[0]) isGood &= await MeasureAsync(kind, hasObserved, hasForecast, stop);
        }

        return isGood ? 0 : 1;
    }

    private static async Task<bool> MeasureAsync(ServiceKind kind, bool hasObserved, bool hasForecast, CancellationToken stop)
    {
        TimeProvider clock = TimeProvider.System;
        GC.Collect();
        await using FetchHost host = new(new FetchReplies(clock).Of, clock);
        using var services = WeatherServices.Create(new ServiceClient("operator@example.org", "1.0"), clock);
        ServiceRequest[] requests = FetchSites.Requests(kind, host.Address, clock.GetUtcNow());
        long start = Stopwatch.GetTimestamp();
        IReadOnlyList<ServiceReading> readings = await services.FetchAsync(requests, stop);
        double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;

        using var process = Process.GetCurrentProcess();
        double peakMB = process.PeakWorkingSet64 / 1e6;
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{ServiceFacts.Word(kind),-24}{seconds,8:N2}{host.Requests,10:N0}{peakMB,10:N0}"));
        ServiceReading[] bad = [.. readings.Where(each => !IsWhole(each, hasObserved, hasForecast))];
        if (bad.Length > 0) Console.WriteLine($"  {bad.Length} sites did NOT get their days, the first {bad[0].Request.Site.Name}: {string.Join("; ", bad[0].Faults)}");
        bool isReached = seconds < MostSeconds && peakMB < MostMB;
        if (!isReached) Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  NOT under {MostSeconds:N0} s and {MostMB:N0} MB"));
        return bad.Length == 0 && isReached;
    }

    private static bool IsWhole(ServiceReading reading, bool hasObserved, bool hasForecast)
    {
        bool observed = DaysOf(reading.Observed) == (hasObserved ? FetchSites.PastDays : 0);
        bool forecast = hasForecast ? DaysOf(reading.Forecast?.Days) >= LeastForecastDays : reading.Forecast is null;
        return observed && forecast && reading.Faults.All(fault => fault.Severity == FaultSeverity.Remark);
    }

    private static int DaysOf(DailySeries? series)
    {
        int days = 0;
        for (int i = 0; i < series?.Count; i++) days += double.IsNaN(series.MinimumAirC[i] + series.MaximumAirC[i]) ? 0 : 1;
        return days;
    }
}
