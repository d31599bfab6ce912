using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;
using GddWatch.Feeds;
using GddWatch.Feeds.Faults;
using GddWatch.Feeds.Services;
using GddWatch.Storage;

namespace GddWatch.Watching;

/// <summary>The days of an open weather service, as they were kept when the service was asked. Reading it asks nobody.</summary>
internal sealed class KeptServiceFeed(ServiceFeedDefinition service, KeptWeather kept, FetchReport fetched) : IWeatherFeed
{
    public string Name => service.Name;

    public Task<FeedReading> ReadAsync(Site site, DateOnly today, CancellationToken stop)
    {
        DailySeries? series = kept.Days.GetValueOrDefault((site.Id, Name))?.Until(today);
        IReadOnlyList<Fault> latestFaults = fetched.FaultsOf(site.Id, Name);
        // A service that fails today is no reason to refuse the days that it gave before.
        IReadOnlyList<Fault> faults = series is null ? latestFaults : [.. latestFaults.Select(fault => fault.Severity == FaultSeverity.Refused ? fault with { Severity = FaultSeverity.LeftOut } : fault)];
        if (series is null && faults.Count == 0 && service.Kind != ServiceKind.UsWeatherService) faults = [NothingKept()];
        return Task.FromResult(new FeedReading(series, faults) { Remarks = [.. fetched.Remarks[(site.Id, Name)], .. Silent(series, latestFaults, today)] });
    }

    /// <summary>A service that has failed for days is told, also where another feed keeps the site going.</summary>
    private IEnumerable<FeedRemark> Silent(DailySeries? series, IReadOnlyList<Fault> latestFaults, DateOnly today)
    {
        if (series is null || series.LastDay.AddDays(WindowJudge.StaleAfterDays) >= today) yield break;
        if (latestFaults.FirstOrDefault(fault => fault.Severity == FaultSeverity.Refused) is not { } failed) yield break;
        yield return new FeedRemark($"{Name} silent", $"{Name} has given no day since {Wording.Day(series.LastDay)}. {failed}");
    }

    private Fault NothingKept() => new()
    {
        Severity = FaultSeverity.Refused,
        File = Name,
        Problem = "Nothing has been fetched from this service yet.",
        Accepted = "the service asks for it at its next pass; `gddwatch watch --once` does so now. Look whether --data names the folder that the service keeps its weather in.",
    };
}
