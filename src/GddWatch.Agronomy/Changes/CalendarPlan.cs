using GddWatch.Agronomy.Chances;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Changes;

/// <summary>What stands in the calendars of a site: each window that has opened in the current season or in the one before, as a notice of how it stands.</summary>
public static class CalendarPlan
{
    /// <summary>The windows, those without an entry left out; told or not, but none that a local rule bans, that the site settled against or that is not told there.</summary>
    /// <param name="standing">Where the site's windows stand.</param>
    /// <param name="metrics">The site's weather and journal as of the same day.</param>
    /// <param name="region">The local rules, and the units that people read.</param>
    /// <param name="ahead">What the days ahead may bring.</param>
    public static IReadOnlyList<Notice> For(Standing standing, SiteMetrics metrics, Region region, DaysAhead? ahead = null)
    {
        ArgumentNullException.ThrowIfNull(standing);
        var writer = new NoticeWriter(standing, metrics, region, ahead ?? DaysAhead.Unknown, withCharts: false);
        return
        [
            .. standing.Ended.Concat(standing.Windows)
                .Where(window => window.Treatment.IsToldAt(window.Site) && !window.Treatment.BulletinOnly && window.FirstOpening is not null)
                .Where(window => window.State == WindowState.Closed || !(NoticePlan.IsBanned(window, region, standing.Day) || NoticePlan.IsSettledAgainst(window, standing)))
                .Select(writer.AsItStands),
        ];
    }
}
