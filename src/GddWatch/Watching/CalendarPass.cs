using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Places;
using GddWatch.Notices.Channels;

namespace GddWatch.Watching;

/// <summary>Writes the calendars of all windows after a pass is kept. They rest on what was kept and judged alone, so that one that was missed is made up for by the next pass.</summary>
internal static class CalendarPass
{
    /// <summary>Writes them.</summary>
    /// <param name="calendars">The folder.</param>
    /// <param name="region">The region.</param>
    /// <param name="judgings">How the sites were judged, by their ids.</param>
    /// <param name="tellings">What was told of each window by now.</param>
    /// <param name="at">The instant of the pass.</param>
    /// <param name="stop">Stops it.</param>
    /// <returns>What went wrong, a sentence each.</returns>
    public static async Task<IReadOnlyList<string>> WriteAsync(
        CalendarFolder calendars, Region region, IReadOnlyDictionary<string, SiteJudging> judgings, Tellings tellings, DateTimeOffset at, CancellationToken stop)
    {
        var failures = new List<string>();
        var windows = new Dictionary<string, IReadOnlyList<Notice>>(StringComparer.Ordinal);
        foreach ((string site, SiteJudging judging) in judgings)
        {
            stop.ThrowIfCancellationRequested();
            if (judging.Metrics is not { } metrics) continue;
            try
            {
                windows.Add(site, [.. CalendarPlan.For(judging.Standing, metrics, region).Select(tellings.Numbered)]);
            }
            catch (Exception failure) when (failure is not OperationCanceledException)
            {
                // One site's bad day must not cost the others theirs.
                failures.Add($"The calendar of {site} could not be made: {failure.Message}");
            }
        }

        if (await calendars.WriteAsync(region, windows, at, stop) is { } trouble) failures.Add(trouble);
        return failures;
    }
}
