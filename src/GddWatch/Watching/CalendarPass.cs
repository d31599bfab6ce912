using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Places;
using GddWatch.Notices.Channels;

namespace GddWatch.Watching;

/// <summary>The calendars of all windows, written after a pass is kept. They rest on what was kept and judged alone, so that one that was missed is made up for by the next pass.</summary>
internal static class CalendarPass
{
    /// <summary>What stands in a site's calendar; null where there is no weather to say it from.</summary>
    public static IReadOnlyList<Notice>? Of(SiteJudging judging, Region region) => judging.Metrics is { } metrics ? CalendarPlan.For(judging.Standing, metrics, region, judging.Ahead) : null;

    /// <summary>Puts them into words.</summary>
    /// <param name="calendars">The folder.</param>
    /// <param name="region">The region.</param>
    /// <param name="windows">What stands in the sites' calendars, by their ids.</param>
    /// <param name="tellings">What was told of each window by now.</param>
    /// <param name="stop">Stops it.</param>
    public static CalendarSheets Prepare(CalendarFolder calendars, Region region, IEnumerable<(string Site, IReadOnlyList<Notice> Windows)> windows, Tellings tellings, CancellationToken stop) =>
        calendars.Prepare(region, windows.ToDictionary(each => each.Site, IReadOnlyList<Notice> (each) => [.. each.Windows.Select(tellings.Numbered)], StringComparer.Ordinal), stop);
}
