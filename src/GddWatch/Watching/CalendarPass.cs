using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Places;
using GddWatch.Notices.Channels;

namespace GddWatch.Watching;

/// <summary>Writes the calendars of all windows after a pass is kept. They rest on what was kept and judged alone, so that one that was missed is made up for by the next pass.</summary>
internal static class CalendarPass
{
    /// <summary>What stands in a site's calendar; null where there is no weather to say it from.</summary>
    public static IReadOnlyList<Notice>? Of(SiteJudging judging, Region region) => judging.Metrics is { } metrics ? CalendarPlan.For(judging.Standing, metrics, region, judging.Ahead) : null;

    /// <summary>Writes them.</summary>
    /// <param name="calendars">The folder.</param>
    /// <param name="region">The region.</param>
    /// <param name="windows">What stands in the sites' calendars, by their ids.</param>
    /// <param name="tellings">What was told of each window by now.</param>
    /// <param name="at">The instant of the pass.</param>
    /// <param name="stop">Stops it.</param>
    /// <returns>What went wrong; null where nothing did.</returns>
    public static Task<string?> WriteAsync(
        CalendarFolder calendars, Region region, IReadOnlyDictionary<string, IReadOnlyList<Notice>> windows, Tellings tellings, DateTimeOffset at, CancellationToken stop) =>
        calendars.WriteAsync(region, windows.ToDictionary(site => site.Key, site => (IReadOnlyList<Notice>)[.. site.Value.Select(tellings.Numbered)]), at, stop);
}
